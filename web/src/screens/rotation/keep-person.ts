/** Everything one person does, kept as it is, and nothing else for them: the rest of their time is kept as off duty. */
import type { Plan, PlanSpan } from '@pitlamp/race'
import { freshId } from '../../planning/defaults.ts'

interface Extent {
  readonly id: string
  /** How far the segment goes. */
  readonly lengthMs: number
}

/** Lines made to keep somebody off duty begin with this, so that they go when the person is let go. */
const OFF = 'off'

/** Every line of theirs is kept, and they are kept off duty in exactly the rest. */
export function isPersonKept(plan: Plan, person: string, segments: readonly Extent[]): boolean {
  const theirs = plan.spans.filter((one) => one.person === person)
  const off = theirs.filter(isMadeOff)
  const gaps = gapsIn(theirs, segments)
  const isOff = ({ segment, fromMs, toMs }: Stretch) =>
    off.some((one) => one.segment === segment && one.fromMs === fromMs && one.toMs === toMs)
  const isAll = theirs.every(({ pinned }) => pinned)
  return segments.length > 0 && isAll && off.length === gaps.length && gaps.every(isOff)
}

export function keepPerson(plan: Plan, person: string, segments: readonly Extent[]): Plan {
  const spans = letPersonGo(plan, person).spans.map((one) =>
    one.person === person ? { ...one, pinned: true as const } : one,
  )
  const theirs = spans.filter((one) => one.person === person)
  for (const gap of gapsIn(theirs, segments)) {
    spans.push({ id: freshId(OFF, spans), person, duty: 'offDuty', ...gap, pinned: true })
  }
  return { ...plan, spans }
}

/** What was off duty only because they were kept goes. */
export function letPersonGo(plan: Plan, person: string): Plan {
  const spans = plan.spans
    .filter((one) => one.person !== person || !isMadeOff(one))
    .map((one) => {
      const { pinned: _, ...free } = one
      return one.person === person ? free : one
    })
  return { ...plan, spans }
}

function isMadeOff({ id, duty }: PlanSpan): boolean {
  return duty === 'offDuty' && id.startsWith(OFF)
}

type Stretch = Pick<PlanSpan, 'segment' | 'fromMs' | 'toMs'>

/** What none of somebody's lines covers, but for those that were made to. */
function gapsIn(theirs: readonly PlanSpan[], segments: readonly Extent[]): readonly Stretch[] {
  return segments.flatMap(({ id: segment, lengthMs }) => {
    const here = theirs.filter((one) => one.segment === segment && !isMadeOff(one))
    const gaps: Stretch[] = []
    let reachedMs = 0
    for (const { fromMs, toMs } of here.sort((a, b) => a.fromMs - b.fromMs)) {
      if (fromMs > reachedMs) gaps.push({ segment, fromMs: reachedMs, toMs: fromMs })
      reachedMs = Math.max(reachedMs, toMs)
    }
    return reachedMs < lengthMs ? [...gaps, { segment, fromMs: reachedMs, toMs: lengthMs }] : gaps
  })
}
