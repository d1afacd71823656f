/** Six lanes and two sit-outs: eight segments of twenty minutes with lane changes of five, four people. */
import type { Crew } from '../documents/crew.ts'
import type { Plan, PlanSpan } from '../documents/plan.ts'
import type { Regulations, SegmentItem } from '../documents/rules.ts'
import type { Rule } from '../rules/index.ts'
import { PEOPLE } from './ids.ts'
import { GREEN, Pressing } from './pressing.ts'
import { adopt, MINUTE } from './small-meeting.ts'

export const SEGMENT_MS = 20 * MINUTE
const EVERY_MS = 25 * MINUTE
const COLOURS = ['red', 'white', 'green', 'blue', 'yellow', 'black']

export const LANE_RULES: readonly Rule[] = [
  {
    id: 'track',
    kind: 'tracks',
    value: { tracks: 1, lanes: 6, sections: 50, colours: COLOURS },
  },
  { id: 'order', kind: 'laneOrder', value: { moves: 'oddUpEvenDown', sitOutsAfter: [5, 2] } },
  { id: 'change', kind: 'laneChange', value: { lengthMs: 300_000, earliestMs: 180_000 } },
  { id: 'post', kind: 'postByLane', value: { tied: true } },
]

export interface LaneMeeting {
  /** In place of those above. */
  readonly rules?: readonly Rule[]
  /** Beside them. */
  readonly also?: readonly Rule[]
  readonly segments?: number
  readonly plan?: Plan | null
  readonly midnightAt?: number
  readonly segment?: (number: number) => Partial<SegmentItem>
  readonly there?: Crew['people'][number]['there']
}

/** Segments `s1`, `s2` …; the first is planned for GREEN, everything else follows it. Documents are adopted, no green. */
export function laneMeeting(of: LaneMeeting = {}): Pressing {
  const pressing = new Pressing()
  const rules = [...(of.rules ?? LANE_RULES), ...(of.also ?? [])]
  const midnight = of.midnightAt === undefined ? {} : { midnightAt: of.midnightAt }
  const name = { name: 'Lanes by hand', timeZone: 'Europe/Berlin', ...midnight }
  adopt(pressing, { document: 'rules', content: { ...name, programme: programmeOf(of), rules } })
  const people = Object.entries(PEOPLE).map(([name, id]) => ({ id, name, duties: [] }))
  const [first, ...rest] = people
  const crew = of.there ? [{ ...first, there: of.there }, ...rest] : people
  adopt(pressing, { document: 'crew', content: { people: crew } })
  if (of.plan !== null)
    adopt(pressing, { document: 'plan', content: of.plan ?? lanePlan(of.segments) })
  return pressing
}

function programmeOf({
  segments = 8,
  segment = () => ({}),
}: LaneMeeting): Regulations['programme'] {
  return Array.from({ length: segments }, (_, place): Regulations['programme'] => {
    const number = place + 1
    const item: SegmentItem = {
      ...{ id: `s${number}`, kind: 'segment', length: { by: 'time', lengthMs: SEGMENT_MS } },
      lane: 'notDrawnYet',
      ...(number === 1 ? { plannedAt: GREEN } : {}),
      ...segment(number),
    }
    const change = { id: `c${number}`, kind: 'laneChange' as const }
    return number === segments ? [item] : [item, change]
  }).flat()
}

/** Solveig drives the odd segments and Okello the even ones; Imre marshals in all of them. */
export function lanePlan(segments = 8): Plan {
  const whole = { fromMs: 0, toMs: SEGMENT_MS }
  const spans = Array.from({ length: segments }, (_, place): PlanSpan[] => {
    const number = place + 1
    const person = place % 2 === 0 ? PEOPLE.Solveig : PEOPLE.Okello
    const here = { segment: `s${number}`, ...whole }
    return [
      { id: `d${number}`, person, duty: 'controller', ...here },
      { id: `m${number}`, person: PEOPLE.Imre, duty: 'post', ...here },
    ]
  }).flat()
  const captain = { goMarginMs: 2_000, askForClockAtMs: 5_000, hotWorkInStops: false }
  return { spans, stops: [], captain }
}

/** When a segment goes green where everything runs to time. */
export function greenOf(number: number): number {
  return GREEN + (number - 1) * EVERY_MS
}

/** Runs segments from one to another to time, each from green to its end. */
export function runSegments(pressing: Pressing, from: number, to: number): Pressing {
  for (let number = from; number <= to; number += 1) {
    pressing.press(greenOf(number), 'green.1', { segment: `s${number}` })
    pressing.press(greenOf(number) + SEGMENT_MS, 'segmentEnd.1', { segment: `s${number}` })
  }
  return pressing
}
