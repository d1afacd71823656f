/** Lanes in words, as the hall says them: by number, the track where there are several, and the colour. */
import { lanesOf, phaseOf, type SegmentLane, type State } from '@pitlamp/race'

/** `lane 5, white`, `lane 2 of track 1, red`, `sit-out`, `not drawn yet` */
export function laneWords(lane: SegmentLane): string {
  if (lane === 'sitOut') return 'sit-out'
  if (lane === 'notDrawnYet') return 'not drawn yet'
  const { lane: number, track, colour } = lane
  const where = track === undefined ? `lane ${number}` : `lane ${number} of track ${track}`
  return colour === undefined ? where : `${where}, ${colour}`
}

/** The lane of the segment that runs or was interrupted; undefined between segments and where there are no lanes. */
export function laneNow(state: State, now: number): SegmentLane | undefined {
  const { phase, segment } = phaseOf(state, now)
  if (!segment || (phase !== 'green' && phase !== 'powerOff')) return undefined
  return lanesOf(state, now).get(segment.item.id)
}

/** The lane of one segment. */
export function laneIn(state: State, now: number, segment: string): SegmentLane | undefined {
  return lanesOf(state, now).get(segment)
}

const COLOURS = [
  ...['red', 'orange', 'yellow', 'green', 'blue', 'purple', 'white', 'black', 'pink', 'brown'],
  'grey',
] as const
export type StickerColour = (typeof COLOURS)[number]

const SAME: Readonly<Record<string, StickerColour>> = { violet: 'purple', gray: 'grey' }

/** What a lane's sticker can be drawn in; undefined where the hall's word is none of these. */
export function stickerOf(colour: string | undefined): StickerColour | undefined {
  const word = colour?.trim().toLowerCase() ?? ''
  return SAME[word] ?? COLOURS.find((one) => one === word)
}
