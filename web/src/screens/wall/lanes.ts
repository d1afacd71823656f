/** Lanes: which one a segment has, those to come, and what may be drawn. */
import { inForce, known, ruleValue, segmentsOf, type State } from '@pitlamp/race'
import type { Tile } from '../../parts/shown.ts'
import type { ToRecord } from './to-record.ts'
import { hasLanes } from './verb-context.ts'

/** More than this is no row of tiles any more, and no track either. Common practice, no source. */
const MOST_LANES = 12
const USUAL_LANES = 8
const SIT_OUT = 'sitOut'

export interface LaneChoice {
  /** Segments ahead: the next one first. */
  readonly segments: readonly Tile[]
  readonly lanes: readonly Tile[]
}

export function laneChoice(state: State, now: number): LaneChoice {
  const segments = ahead(state, now).map(({ item, index }) => ({
    id: item.id,
    word: item.name ?? `Segment ${index + 1}`,
    hint: laneWords(laneOf(state, now, item.id)) ?? 'not drawn yet',
  }))
  const rules = inForce(state, 'rules', now)?.rules ?? []
  const count = Math.min(known(ruleValue(rules, 'tracks')?.lanes) ?? USUAL_LANES, MOST_LANES)
  const numbers = Array.from({ length: count }, (_, place) => String(place + 1))
  const lanes = numbers.map((lane) => ({ id: lane, word: `Lane ${lane}` }))
  return { segments, lanes: [...lanes, { id: SIT_OUT, word: 'Sit-out' }] }
}

export function laneDrawn(segment: string, choice: string): ToRecord {
  const lane = choice === SIT_OUT ? null : Number(choice)
  return { kind: 'laneDrawn.1', body: { segment, lane }, word: laneWords(lane) ?? 'Lane' }
}

/** As drawn, else as the programme has it; undefined while neither says. */
function laneOf(state: State, now: number, segment: string): number | null | undefined {
  const drawn = state.raceControl.lanes[segment]
  if (drawn !== undefined) return drawn
  const programme = inForce(state, 'rules', now)?.programme ?? []
  const item = programme.find(({ id }) => id === segment)
  if (item?.kind !== 'segment' || item.lane === 'notDrawnYet') return undefined
  return item.lane === 'sitOut' ? null : item.lane
}

/** `Lanes to come: lane 5, sit-out`; undefined where lanes mean nothing or no segment is to come. */
export function lanesToCome(state: State, now: number): string | undefined {
  const words = ahead(state, now).map(({ item }) => laneWords(laneOf(state, now, item.id)))
  if (words.length === 0 || !hasLanes(state, now)) return undefined
  const drawn = words.some((word) => word !== undefined)
  const all = words.map((word) => word ?? 'not drawn').join(', ')
  return `Lanes to come: ${drawn ? all : 'not drawn yet'}`
}

function laneWords(lane: number | null | undefined): string | undefined {
  if (lane === undefined) return undefined
  return lane === null ? 'sit-out' : `lane ${lane}`
}

function ahead(state: State, now: number) {
  return segmentsOf(state, now).filter((outlook) => outlook.state === 'ahead')
}
