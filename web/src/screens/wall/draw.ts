/** The draw: where we begin, from which everything after follows, or the lane of one segment. */
import {
  inForce,
  known,
  lanesOf,
  roundOf,
  ruleValue,
  segmentsOf,
  type Body,
  type Rule,
  type SegmentOutlook,
  type State,
} from '@pitlamp/race'
import { laneWords } from '../../parts/lane-words.ts'
import type { Tile } from '../../parts/shown.ts'
import type { ToRecord } from './to-record.ts'

/** More than this is no row of tiles any more, and no track either. Common practice, no source. */
const MOST_LANES = 12
const USUAL_LANES = 8
const SIT_OUT = 'sitOut'

export interface LaneChoice {
  /** Where we begin, in one press; absent where the rules do not say in which order lanes are run. */
  readonly start?: {
    /** `We begin on`, or where cars have run: `From Segment 5 on`. */
    readonly label: string
    readonly tiles: readonly Tile[]
    /** Of several groups ours is said first. */
    readonly groups: readonly Tile[]
  }
  /** Segments ahead: the next one first. */
  readonly segments: readonly Tile[]
  readonly lanes: readonly Tile[]
}

export function laneChoice(state: State, now: number): LaneChoice {
  const lanes = lanesOf(state, now)
  const ahead = aheadOf(state, now)
  const rules = inForce(state, 'rules', now)?.rules ?? []
  const start = startOf(rules, ahead[0])
  const segments = ahead.map((outlook) => ({
    id: outlook.item.id,
    word: nameOf(outlook),
    hint: laneWords(lanes.get(outlook.item.id) ?? 'notDrawnYet'),
  }))
  return { ...(start ? { start } : {}), segments, lanes: everyLane(rules) }
}

function startOf(rules: readonly Rule[], first: SegmentOutlook | undefined): LaneChoice['start'] {
  const round = roundOf(rules)
  if (!round || !first) return undefined
  const numbers = [...new Set(round.filter((place) => place !== 'sitOut'))].sort((a, b) => a - b)
  const sitOuts = round.filter((place) => place === 'sitOut').length
  const outs = Array.from({ length: sitOuts }, (_, place) => ({
    id: `${SIT_OUT} ${place + 1}`,
    word: sitOuts > 1 ? `Sit-out ${place + 1}` : 'Sit-out',
    ...(sitOuts > 1 ? { hint: afterWords(round, place) } : {}),
  }))
  return {
    label: first.index === 0 ? 'We begin on' : `From ${nameOf(first)} on`,
    tiles: [...numbers.map((lane) => laneTile(lane, rules)), ...outs],
    groups: groupsOf(rules),
  }
}

/** `after lane 5`: which of several sit-outs it is. */
function afterWords(round: ReturnType<typeof roundOf> & object, which: number): string {
  const at = round.flatMap((place, index) => (place === 'sitOut' ? [index] : []))[which] ?? 0
  const before = round[(at + round.length - 1) % round.length]
  return typeof before === 'number' ? `after lane ${before}` : 'after the other'
}

function groupsOf(rules: readonly Rule[]): readonly Tile[] {
  const order = ruleValue(rules, 'laneOrder')
  const count = order && known(order.moves) === 'groups' ? (known(order.groups) ?? 1) : 1
  if (count < 2) return []
  const groups = Math.min(count, MOST_LANES)
  return Array.from({ length: groups }, (_, place) => ({
    id: String(place + 1),
    word: `Group ${place + 1}`,
  }))
}

function everyLane(rules: readonly Rule[]): readonly Tile[] {
  const track = ruleValue(rules, 'tracks')
  const all = (known(track?.lanes) ?? USUAL_LANES) * (known(track?.tracks) ?? 1)
  const count = Math.max(1, Math.min(all, MOST_LANES))
  const numbers = Array.from({ length: count }, (_, place) => place + 1)
  return [...numbers.map((lane) => laneTile(lane, rules)), { id: SIT_OUT, word: 'Sit-out' }]
}

function laneTile(lane: number, rules: readonly Rule[]): Tile {
  const colour = known(ruleValue(rules, 'tracks')?.colours)?.[lane - 1]
  const tile = { id: String(lane), word: `Lane ${lane}` }
  return colour === undefined ? tile : { ...tile, hint: colour }
}

/** What one press on a tile of the start records. */
export function startDrawn(
  state: State,
  now: number,
  { choice, group }: { readonly choice: string; readonly group?: string },
): ToRecord {
  const [first] = aheadOf(state, now)
  const [kind, which] = choice.split(' ')
  const isOut = kind === SIT_OUT
  const body: Body<'startDrawn.1'> = {
    lane: isOut ? null : Number(choice),
    ...(isOut ? { sitOut: Number(which) } : {}),
    ...(group === undefined ? {} : { group: Number(group) }),
    ...(first === undefined || first.index === 0 ? {} : { segment: first.item.id }),
  }
  return { kind: 'startDrawn.1', body, word: isOut ? 'Sit-out first' : `Start on lane ${choice}` }
}

/** One segment's lane alone. */
export function laneDrawn(segment: string, choice: string): ToRecord {
  const lane = choice === SIT_OUT ? null : Number(choice)
  const word = lane === null ? 'Sit-out' : `Lane ${lane}`
  return { kind: 'laneDrawn.1', body: { segment, lane }, word }
}

function aheadOf(state: State, now: number): readonly SegmentOutlook[] {
  return segmentsOf(state, now).filter((outlook) => outlook.state === 'ahead')
}

function nameOf({ item, index }: SegmentOutlook): string {
  return item.name ?? `Segment ${index + 1}`
}
