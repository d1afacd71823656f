/** What people wish for, held against a timeline. A wish is no rule: nothing is broken, it is only not fulfilled. */
import type { Crew } from '../documents/crew.ts'
import type { Timeline } from '../timeline/timeline.ts'
import { durationInWords } from './in-words.ts'
import { longestFree } from './rests.ts'

export interface WishFinding {
  readonly person: string
  readonly name: string
  readonly limitMs: number
  /** The longest rest that the timeline leaves, within the instants wished for. */
  readonly valueMs: number
  /** Below 0 where it is not fulfilled. */
  readonly marginMs: number
  readonly sentence: string
}

/**
 * One for each person who wishes for a rest without a break, in the order of the crew. Every duty breaks it, a post
 * as well. Instants that are not named are those of the timeline's first green and its end.
 */
export function wishesOf(crew: Crew, timeline: Timeline): readonly WishFinding[] {
  const fromAt = timeline.segments[0]?.startsAt
  const toAt = timeline.segments.reduce((end, one) => Math.max(end, one.endsAt ?? one.startsAt), 0)
  if (fromAt === undefined) return []
  return crew.people.flatMap(({ id, name, restBlock }): readonly WishFinding[] => {
    if (!restBlock) return []
    const duties = timeline.spans.filter((one) => one.person === id && one.duty !== 'offDuty')
    const window = { fromAt: restBlock.fromAt ?? fromAt, toAt: restBlock.toAt ?? toAt }
    const valueMs = longestFree(duties, [window])
    const limitMs = restBlock.atLeastMs
    const [rests, wishes] = [durationInWords(valueMs), durationInWords(limitMs)]
    const sentence = `${name}’s longest rest is ${rests}, ${name} wishes for ${wishes}.`
    return [{ person: id, name, limitMs, valueMs, marginMs: valueMs - limitMs, sentence }]
  })
}
