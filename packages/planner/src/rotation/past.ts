/** What was raced already, read slot by slot. */
import type { Grid } from '../grid/grid.ts'
import type { Slot } from '../grid/slots.ts'
import type { Duty, Span } from '../problem/problem.ts'

/** Spans of a duty that cover a past slot. */
export function hadDuty({ segment, fromMs, toMs }: Slot, duty: Duty): readonly Span[] {
  return (segment.past?.spans ?? []).filter(
    (span) => span.duty === duty && span.fromMs <= fromMs && span.toMs >= toMs,
  )
}

/** Who had the controller; undefined where nobody did. */
export function drivenBy(slot: Slot): string | undefined {
  return hadDuty(slot, 'controller')[0]?.person
}

/** Whether the stint of a past slot went on into the next one, which was raced too. */
export function wentOn({ slots, goesOnAt, problem }: Grid, next: number): boolean {
  const [before, after] = [slots[next - 1], slots[next]]
  if (!before?.isPast || !after?.isPast || !goesOnAt[next]) return false
  const [one, other] = [hadDuty(before, 'controller')[0], hadDuty(after, 'controller')[0]]
  if (!one || one.person !== other?.person) return false
  return !problem.counting.changeWithOneself || after.begins === 'laneChange' || one === other
}
