/** What the captain keeps. */
import type { Pin } from '@pitlamp/planner'
import { known, ruleValue, type TimelineSpan } from '@pitlamp/race'
import type { Ground } from './ground.ts'
import { cameToMs } from './segments.ts'

/** Of what is still to come. A stop that is kept is a given one, and one where stops are chosen a pin as well. */
export function plannedPins(ground: Ground): readonly Pin[] {
  const kept = new Set(ground.plan.spans.flatMap(({ id, pinned }) => (pinned ? [id] : [])))
  return ground.planned.flatMap((span): readonly Pin[] => {
    const segment = ground.timeline.segments.find(({ id }) => id === span.segment)
    if (!segment || !kept.has(span.id)) return []
    const { person, duty, toMs } = span
    const fromMs = Math.max(beginOf(span, ground), cameToMs(segment, ground))
    if (fromMs >= toMs) return []
    const about = { id: `pin/${span.id}`, person, segment: span.segment, fromMs, toMs }
    return [duty === 'offDuty' ? { ...about, kind: 'off' } : { ...about, kind: 'span', duty }]
  })
}

/** A relief is written down from when it comes: it holds the post from when the marshal before it leaves. */
function beginOf(span: TimelineSpan, { planned, regulations }: Ground): number {
  const { duty, segment, fromMs, post } = span
  const relief = ruleValue(regulations.rules, 'relief')
  const byMs = known(relief?.before) === true ? (known(relief?.byMs) ?? 0) : 0
  const isRelief = planned.some(
    (one) =>
      one.duty === 'post' &&
      one.segment === segment &&
      one.post === post &&
      one.toMs === fromMs + byMs,
  )
  return duty === 'post' && isRelief ? fromMs + byMs : fromMs
}
