/** What the captain keeps. */
import type { Pin } from '@pitlamp/planner'
import { known, ruleValue, type TimelineSpan } from '@pitlamp/race'
import type { Ground } from './ground.ts'
import { cameToMs, lengthOf } from './segments.ts'

type Stretched = Exclude<Pin, { kind: 'stop' }>

/** Of what is still to come. A stop that is kept is a given one, and one where stops are chosen a pin as well. */
export function plannedPins(ground: Ground): readonly Stretched[] {
  const lines = keptLines(ground)
  return [...lines, ...restOfKept(ground, lines)]
}

function keptLines(ground: Ground): readonly Stretched[] {
  const { spans, keptPeople = [] } = ground.plan
  const kept = new Set(spans.flatMap(({ id, pinned }) => (pinned ? [id] : [])))
  return ground.planned.flatMap((span): readonly Stretched[] => {
    const segment = ground.timeline.segments.find(({ id }) => id === span.segment)
    if (!segment || !(kept.has(span.id) || keptPeople.includes(span.person))) return []
    const { person, duty, toMs } = span
    const fromMs = Math.max(beginOf(span, ground), cameToMs(segment, ground))
    if (fromMs >= toMs) return []
    const about = { id: `pin/${span.id}`, person, segment: span.segment, fromMs, toMs }
    return [duty === 'offDuty' ? { ...about, kind: 'off' } : { ...about, kind: 'span', duty }]
  })
}

/** Who is kept is off duty wherever none of their lines is. */
function restOfKept(ground: Ground, lines: readonly Stretched[]): readonly Stretched[] {
  const { plan, crew, timeline } = ground
  const isThere = (person: string) => crew.people.some(({ id }) => id === person)
  return (plan.keptPeople ?? []).filter(isThere).flatMap((person) =>
    timeline.segments.flatMap((segment): readonly Stretched[] => {
      const theirs = lines.filter((pin) => pin.person === person && pin.segment === segment.id)
      const all = { fromMs: cameToMs(segment, ground), toMs: lengthOf(segment, ground) }
      return gapsIn(all, theirs).map((gap) => ({
        ...{ id: `pin/off/${person}/${segment.id}/${gap.fromMs}`, kind: 'off', person },
        ...{ segment: segment.id, ...gap },
      }))
    }),
  )
}

interface Stretch {
  readonly fromMs: number
  readonly toMs: number
}

function gapsIn({ fromMs, toMs }: Stretch, taken: readonly Stretch[]): readonly Stretch[] {
  const gaps: Stretch[] = []
  let reachedMs = fromMs
  for (const one of [...taken].sort((a, b) => a.fromMs - b.fromMs)) {
    if (one.fromMs > reachedMs) gaps.push({ fromMs: reachedMs, toMs: one.fromMs })
    reachedMs = Math.max(reachedMs, one.toMs)
  }
  return reachedMs < toMs ? [...gaps, { fromMs: reachedMs, toMs }] : gaps
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
