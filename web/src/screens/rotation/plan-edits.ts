/** Adding to the plan that is being written: each line goes on where the last one ends. Changes are made in place. */
import type { Crew, Duty, Plan, PlanSpan, Regulations } from '@pitlamp/race'
import { lengthOf, segmentsIn, windowsOf } from '../../planning/segments.ts'
import { freshId } from '../../planning/defaults.ts'

/** Common practice, no source: what a plan by hand begins with. */
const STINT_MS = 1_800_000
const HOUR_MS = 3_600_000

interface Written {
  readonly rules: Regulations
  readonly crew: Crew
  readonly plan: Plan
}

/** The next stretch in which nobody has this duty, for whoever is free then and had it least recently. */
export function addSpan({ rules, crew, plan }: Written, duty: Duty): void {
  const open = firstOpen({ rules, crew, plan }, duty)
  if (!open) return
  const { segment, fromMs } = open
  const toMs = Math.min(open.untilMs, fromMs + STINT_MS)
  const busy = plan.spans.filter(
    (span) => span.segment === segment && span.fromMs < toMs && fromMs < span.toMs,
  )
  const person = nextPerson({ rules, crew, plan }, { duty, busy })
  if (person === undefined) return
  plan.spans.push({ id: freshId('p', plan.spans), person, duty, segment, fromMs, toMs })
}

/** One in the middle of each window that has none yet, or one in the first segment where there are no windows. */
export function addStops({ rules, plan }: Written): void {
  const open = windowsOf(rules).filter(
    ({ segment, fromMs, toMs }) =>
      !plan.stops.some(
        (stop) => stop.segment === segment && fromMs <= stop.atMs && stop.atMs <= toMs,
      ),
  )
  for (const { segment, fromMs, toMs } of open) {
    const atMs = Math.round((fromMs + toMs) / 2 / 60_000) * 60_000
    plan.stops.push({ id: freshId('t', plan.stops), segment, atMs, mandatory: true })
  }
  const [first] = segmentsIn(rules)
  if (open.length > 0 || !first) return
  const atMs = Math.round((lengthOf(rules, first.id) ?? HOUR_MS) / 2)
  plan.stops.push({ id: freshId('t', plan.stops), segment: first.id, atMs, mandatory: false })
}

/** In the order in which they come. */
export function inOrder<T extends { readonly segment: string }>(
  rules: Regulations,
  lines: readonly T[],
  from: (line: T) => number,
): readonly T[] {
  const place = new Map(segmentsIn(rules).map(({ id }, index) => [id, index]))
  const at = ({ segment }: T) => place.get(segment) ?? place.size
  return [...lines].sort((a, b) => at(a) - at(b) || from(a) - from(b))
}

function firstOpen({ rules, plan }: Written, duty: Duty) {
  for (const { id: segment } of segmentsIn(rules)) {
    const spans = plan.spans.filter((span) => span.duty === duty && span.segment === segment)
    const fromMs = Math.max(0, ...spans.map(({ toMs }) => toMs))
    const untilMs = lengthOf(rules, segment) ?? fromMs + HOUR_MS
    if (fromMs < untilMs) return { segment, fromMs, untilMs }
  }
  return undefined
}

function nextPerson(
  { rules, crew, plan }: Written,
  { duty, busy }: { readonly duty: Duty; readonly busy: readonly PlanSpan[] },
): string | undefined {
  const able = crew.people.filter(({ id, duties }) => {
    const able = duties.length === 0 || duties.includes(duty)
    return able && !busy.some(({ person }) => person === id)
  })
  const done = inOrder(rules, plan.spans, ({ fromMs }) => fromMs).filter(
    (span) => span.duty === duty,
  )
  const lastOf = (person: string) => done.map((span: PlanSpan) => span.person).lastIndexOf(person)
  return [...able].sort((a, b) => lastOf(a.id) - lastOf(b.id))[0]?.id
}
