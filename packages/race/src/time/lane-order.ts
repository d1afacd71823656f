/** The order in which a car moves over the lanes: one round, which begins anew. */
import { ruleValue, type Rule } from '../rules/index.ts'
import { known } from '../rules/shape.ts'

/** A lane, counted on from track to track, or a segment sat out. */
export type RoundPlace = number | 'sitOut'

/** No hall has more: beyond it a number is a slip of the pen, and no order is read from it. */
const MOST_LANES = 40

/**
 * What the rules know of the order. Odd lanes up, even lanes down: 1 3 5 6 4 2 of six. On several tracks it is one
 * track after the other where no sequence says otherwise (common practice, no source). A sequence has 0 for a
 * segment sat out. Undefined while the order or the number of lanes is not known.
 */
export function roundOf(rules: readonly Rule[]): readonly RoundPlace[] | undefined {
  const order = ruleValue(rules, 'laneOrder')
  const moves = known(order?.moves)
  if (!order || moves === undefined) return undefined
  const { sequence = [] } = order
  if (moves !== 'oddUpEvenDown' && sequence.length > 0) {
    return sequence.map((lane) => (lane === 0 ? 'sitOut' : lane))
  }
  if (moves === 'sequence') return undefined
  const lanes = lanesOfAllTracks(rules)
  return lanes && withSitOuts(lanes, known(order.sitOutsAfter) ?? [])
}

/** Lanes of one track; undefined while that is not known. */
export function lanesPerTrack(rules: readonly Rule[]): number | undefined {
  const lanes = known(ruleValue(rules, 'tracks')?.lanes)
  return lanes !== undefined && lanes > 0 && lanes <= MOST_LANES ? lanes : undefined
}

function lanesOfAllTracks(rules: readonly Rule[]): readonly number[] | undefined {
  const lanes = lanesPerTrack(rules)
  const tracks = Math.max(1, known(ruleValue(rules, 'tracks')?.tracks) ?? 1)
  if (lanes === undefined || lanes * tracks > MOST_LANES) return undefined
  const one = oddUpEvenDown(lanes)
  return Array.from({ length: tracks }, (_, track) =>
    one.map((lane) => track * lanes + lane),
  ).flat()
}

function oddUpEvenDown(lanes: number): readonly number[] {
  const numbers = Array.from({ length: lanes }, (_, place) => place + 1)
  const even = numbers.filter((lane) => lane % 2 === 0)
  return [...numbers.filter((lane) => lane % 2 === 1), ...even.reverse()]
}

function withSitOuts(
  lanes: readonly number[],
  sitOutsAfter: readonly number[],
): readonly RoundPlace[] {
  return lanes.flatMap((lane): readonly RoundPlace[] => {
    const after = sitOutsAfter.filter((one) => one === lane)
    return [lane, ...after.map(() => 'sitOut' as const)]
  })
}
