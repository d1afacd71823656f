/** Penalties and people's states, in the words of the hall. */
import { counted, type Body, placesInWords, placesOf } from '@pitlamp/race'

export type PenaltyBody = Body<'penalty.1'>
export type Presence = Body<'availability.1'>['state']

export const PENALTY_WORD = {
  warning: 'Warning',
  laps: 'Laps',
  secondsHeld: 'Seconds held',
  stopAndGo: 'Stop-and-go',
  driveThrough: 'Drive-through',
  position: 'Place',
  lossOfSegment: 'Loss of the segment',
  exclusion: 'Exclusion',
} as const satisfies Record<PenaltyBody['what'], string>

export const PRESENCE_WORD = {
  here: 'here',
  late: 'late',
  away: 'away',
  unwell: 'unwell',
  wantsRelief: 'wants relief',
} as const satisfies Record<Presence, string>

/** `2 laps`, `Stop-and-go, 10 s`, `Warning`. */
export function penaltyWords({ what, laps, heldMs, words }: PenaltyBody): string {
  if (what === 'laps' && laps !== undefined) return lapsWords(laps)
  const places = what === 'position' ? placesOf({ words }) : undefined
  if (places !== undefined) return placesInWords(places)
  if (heldMs === undefined) return PENALTY_WORD[what]
  const seconds = `${heldMs / 1_000} s`
  return what === 'secondsHeld' ? `${seconds} held` : `${PENALTY_WORD[what]}, ${seconds}`
}

export function lapsWords(laps: number): string {
  return counted(laps, 'lap')
}
