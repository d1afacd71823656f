/** Whether a gap means anything: on fixed lanes not before every team has had every lane. */
import type { ProgrammeItem, SegmentItem } from '../documents/rules.ts'
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { ruleValue, type Rule } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { lanesOf } from '../time/lanes.ts'
import { roundOf } from '../time/lane-order.ts'

export interface Comparable {
  /**
   * `yes`: as it stands. `overSegments`: only over the first `over` segments, a whole number of rounds. `tooEarly`:
   * no round is through yet.
   */
  readonly is: 'yes' | 'overSegments' | 'tooEarly'
  /** Segments of the programme over which teams compare. */
  readonly over: number
  /** How many are through, and how many make a round; 0 where the race has no lanes. */
  readonly through: number
  readonly round: number
}

/**
 * After each round of the lanes every team has had each of them and the same sit-outs, whatever was drawn; in between
 * each has had other lanes. While the order is not known the whole race is the round. A segment counts when it is
 * over, abandoned ones included; one to be run again does not. As it was at `at`, whatever came after.
 */
export function comparableAt(state: State, at: number): Comparable {
  const { programme = [], rules = [] } = inForce(state, 'rules', at) ?? {}
  const segments = programme.filter((item: ProgrammeItem) => item.kind === 'segment')
  const states = segments.map(({ id }) => stateAt(state, id, at))
  const open = states.findIndex((one) => one !== 'over')
  const through = open < 0 ? segments.length : open
  if (lanesOf(state, at).size === 0) return { is: 'yes', over: through, through, round: 0 }
  const round = roundLength(segments, rules)
  const over = through - (through % round)
  const isRunning = states[open] === 'running'
  if (over === 0) return { is: 'tooEarly', over, through, round }
  return { is: over === through && !isRunning ? 'yes' : 'overSegments', over, through, round }
}

function stateAt(state: State, segment: string, at: number): 'ahead' | 'running' | 'over' {
  const { runs, segmentChanges } = state.raceControl
  const run = runs.filter((one) => one.segment === segment && one.greenAt <= at).at(-1)
  if (run && (run.endAt ?? Infinity) > at) return 'running'
  const word = segmentChanges
    .filter(({ at: saidAt, body }) => body.segment === segment && saidAt <= at)
    .filter(
      ({ at: saidAt, body }) => body.change.what !== 'length' && saidAt >= (run?.greenAt ?? 0),
    )
    .at(-1)?.body.change.what
  if (run) return word === 'runAgain' ? 'ahead' : 'over'
  return word === 'abandoned' ? 'over' : 'ahead'
}

/** At least 1. */
function roundLength(segments: readonly SegmentItem[], rules: readonly Rule[]): number {
  const round = roundOf(rules)
  const whole = Math.max(1, segments.length)
  if (!round || round.length === 0) return whole
  const order = ruleValue(rules, 'laneOrder')
  if (known(order?.moves) === 'groups') return round.length * Math.max(1, known(order?.groups) ?? 1)
  if (round.includes('sitOut')) return round.length
  // Sit-outs as the programme has them: until as many segments were run as there are lanes.
  let run = 0
  for (const [place, { lane }] of segments.entries()) {
    if (lane !== 'sitOut') run += 1
    const next = segments[place + 1]
    if (run === round.length && next?.lane !== 'sitOut') return place + 1
  }
  return Math.max(whole, round.length)
}
