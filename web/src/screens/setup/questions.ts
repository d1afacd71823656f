/** What the organiser has not said, to be asked at the briefing; and what the plan leaves open. */
import { NOT_KNOWN_YET } from '@pitlamp/race'
import { hoursMinutes } from '../../parts/time.ts'
import { lengthOf, segmentName, segmentsIn, type Written } from './contradictions.ts'
import { clockDoes, minimumRule, stopsRule, workIsAllowed } from './rule-edits.ts'

export function briefingQuestions({ rules }: Pick<Written, 'rules'>): readonly string[] {
  const { count } = stopsRule(rules)
  const { minimumMs, from, to } = minimumRule(rules)
  const stops = count !== 0
  const open = (value: unknown) => value === NOT_KNOWN_YET
  const asked: readonly (readonly [boolean, string])[] = [
    [open(count), 'How many stops are demanded?'],
    [stops && open(minimumMs), 'How long is a stop at least?'],
    [stops && open(from), 'From which moment is a stop timed: the pit entry, or the car standing?'],
    [stops && open(to), 'Until which moment is it timed: wheels turning, or the pit exit?'],
    [open(clockDoes(rules, 'segment')), 'Does a track call stop the segment’s clock?'],
    [
      stops && open(clockDoes(rules, 'stopMinimum')),
      'Does the minimum stop go on while power is off?',
    ],
    [open(clockDoes(rules, 'driving')), 'Does a track call count as driving time?'],
    [open(workIsAllowed(rules, 'trackCall')), 'May hands touch the car while power is off?'],
  ]
  return asked.filter(([isOpen]) => isOpen).map(([, question]) => question)
}

/** Stretches of a segment in which nobody drives, once anybody does in it. */
export function undriven({ rules, plan }: Written): readonly string[] {
  return segmentsIn(rules).flatMap(({ id }) => {
    const driven = plan.spans
      .filter(({ duty, segment }) => duty === 'controller' && segment === id)
      .sort((a, b) => a.fromMs - b.fromMs)
    if (driven.length === 0) return []
    const gaps: string[] = []
    let upTo = 0
    for (const { fromMs, toMs } of driven) {
      if (fromMs > upTo) gaps.push(gap(segmentName(rules, id), upTo, fromMs))
      upTo = Math.max(upTo, toMs)
    }
    const lengthMs = lengthOf(rules, id)
    if (lengthMs !== undefined && upTo < lengthMs)
      gaps.push(gap(segmentName(rules, id), upTo, lengthMs))
    return gaps
  })
}

function gap(segment: string, fromMs: number, toMs: number): string {
  return `Nobody drives in ${segment} from ${hoursMinutes(fromMs)} to ${hoursMinutes(toMs)}.`
}
