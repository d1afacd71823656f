/** What cannot hold together in rules and plan, said as it is typed. Only what is certain; the rest is asked. */
import type { Crew, Plan, PlanSpan, Regulations, SegmentItem } from '@pitlamp/race'
import { hoursMinutes, isTimeZone } from '../../parts/time.ts'
import { minimumRule, stopsRule, windowsOf } from './rule-edits.ts'

export interface Written {
  readonly rules: Regulations
  readonly crew: Crew
  readonly plan: Plan
}

export interface Contradiction {
  readonly id: string
  readonly what: string
  readonly why: string
}

export function contradictions(written: Written): readonly Contradiction[] {
  return [
    ...inProgramme(written),
    ...inStops(written),
    ...inSpans(written),
    ...inPlannedStops(written),
  ]
}

export function segmentsIn({ programme }: Regulations): readonly SegmentItem[] {
  return programme.filter((item) => item.kind === 'segment')
}

/** `Segment 2`, or its own name. */
export function segmentName(rules: Regulations, id: string): string {
  const segments = segmentsIn(rules)
  const index = segments.findIndex((segment) => segment.id === id)
  return segments[index]?.name ?? (index < 0 ? 'A segment that is gone' : `Segment ${index + 1}`)
}

/** Undefined for a segment that is gone, or counts laps. */
export function lengthOf(rules: Regulations, id: string): number | undefined {
  const segment = segmentsIn(rules).find((segment) => segment.id === id)
  return segment?.length.by === 'time' ? segment.length.lengthMs : undefined
}

function inProgramme({ rules }: Written): Contradiction[] {
  const found: Contradiction[] = []
  if (!isTimeZone(rules.timeZone)) {
    const what = `“${rules.timeZone}” is no time zone.`
    found.push({
      id: 'zone',
      what,
      why: 'Write it as Europe/Dublin, area and town; until then times are UTC.',
    })
  }
  if (segmentsIn(rules).length === 0) {
    found.push({
      id: 'none',
      what: 'There is no segment.',
      why: 'Without one nothing can be given green.',
    })
  }
  for (const { id } of segmentsIn(rules)) {
    if (lengthOf(rules, id) === 0) {
      const what = `${segmentName(rules, id)} has no length.`
      found.push({ id: `length ${id}`, what, why: 'It would be over as it begins.' })
    }
  }
  return found
}

function inStops({ rules }: Written): Contradiction[] {
  const found: Contradiction[] = []
  const { count } = stopsRule(rules)
  if (count !== 0 && minimumRule(rules).minimumMs === 0) {
    const why = 'GO would come as the car stops. Write the minimum, or leave it not known yet.'
    found.push({ id: 'minimum', what: 'The minimum stop is nothing.', why })
  }
  if (count === 0 && windowsOf(rules).length > 0) {
    found.push({
      id: 'windows',
      what: 'There are stop windows but no stops.',
      why: 'One of the two is wrong.',
    })
  }
  for (const { id, segment, fromMs, toMs } of windowsOf(rules)) {
    const what = `The window in ${segmentName(rules, segment)} from ${hoursMinutes(fromMs)} to ${hoursMinutes(toMs)} cannot be used.`
    const why = outside(rules, { segment, fromMs, toMs })
    if (why !== undefined) found.push({ id: `window ${id}`, what, why })
  }
  return found
}

function inSpans({ rules, crew, plan }: Written): Contradiction[] {
  const names = new Map(crew.people.map(({ id, name }) => [id, name]))
  const called = (span: PlanSpan) =>
    `${names.get(span.person) ?? 'Somebody'} in ${segmentName(rules, span.segment)} from ${hoursMinutes(span.fromMs)}`
  const found: Contradiction[] = []
  for (const span of plan.spans) {
    const why = names.has(span.person) ? outside(rules, span) : 'This person is not in the crew.'
    if (why !== undefined)
      found.push({ id: `span ${span.id}`, what: `${called(span)} cannot be.`, why })
  }
  plan.spans.forEach((one, index) => {
    for (const other of plan.spans.slice(index + 1)) {
      if (one.segment !== other.segment || !overlap(one, other)) continue
      const id = `pair ${one.id} ${other.id}`
      if (one.person === other.person) {
        const what = `${names.get(one.person) ?? 'Somebody'} is in two places.`
        found.push({ id, what, why: bothFrom(rules, one, other) })
      } else if (one.duty === 'controller' && other.duty === 'controller') {
        const what = `${names.get(one.person) ?? 'Somebody'} and ${names.get(other.person) ?? 'somebody'} both drive.`
        found.push({ id, what, why: bothFrom(rules, one, other) })
      }
    }
  })
  return found
}

function inPlannedStops({ rules, plan }: Written): Contradiction[] {
  const windows = windowsOf(rules)
  return plan.stops.flatMap(({ id, segment, atMs, mandatory }) => {
    const what = `The stop in ${segmentName(rules, segment)} at ${hoursMinutes(atMs)} does not fit.`
    const why = outside(rules, { segment, fromMs: atMs, toMs: atMs + 1 })
    if (why !== undefined) return [{ id: `stop ${id}`, what, why }]
    const served = windows.some((w) => w.segment === segment && w.fromMs <= atMs && atMs <= w.toMs)
    return mandatory && windows.length > 0 && !served
      ? [
          {
            id: `stop ${id}`,
            what,
            why: 'A mandatory stop is taken inside a window, and this is in none.',
          },
        ]
      : []
  })
}

interface Stretch {
  readonly segment: string
  readonly fromMs: number
  readonly toMs: number
}

function outside(rules: Regulations, { segment, fromMs, toMs }: Stretch): string | undefined {
  if (!segmentsIn(rules).some(({ id }) => id === segment))
    return 'Its segment is gone from the programme.'
  if (toMs <= fromMs) return 'It ends before it begins.'
  const lengthMs = lengthOf(rules, segment)
  if (lengthMs === undefined || toMs <= lengthMs) return undefined
  return `${segmentName(rules, segment)} is over at ${hoursMinutes(lengthMs)}.`
}

function overlap(one: PlanSpan, other: PlanSpan): boolean {
  return one.fromMs < other.toMs && other.fromMs < one.toMs
}

function bothFrom(rules: Regulations, one: PlanSpan, other: PlanSpan): string {
  const from = hoursMinutes(Math.max(one.fromMs, other.fromMs))
  const to = hoursMinutes(Math.min(one.toMs, other.toMs))
  return `In ${segmentName(rules, one.segment)} from ${from} to ${to}.`
}
