/**
 * Shifts at the posts, one column each, where a rule limits them: the solver then sees how many it takes. The rule's
 * own rows say the same slot by slot, for when shifts can be relaxed or some were stood already.
 */
import type { Slot } from '../grid/slots.ts'
import type { Term } from '../linear/model.ts'
import type { MarshalShift } from '../rules/marshal-shift.ts'
import { earlyMs } from './early.ts'
import type { Place, Rotation } from './rotation.ts'

interface Shift {
  readonly from: number
  readonly to: number
  /** The first slot in which this person may come to a post again. */
  readonly until: number
  readonly column: number
}

/** For one person at one place, who may hold it in the slots given. */
export function addShifts(
  rotation: Rotation,
  place: Place,
  { person, slots, rule }: { person: string; slots: readonly Slot[]; rule: MarshalShift },
): void {
  const { model } = rotation
  const shifts = slots.flatMap((first) => shiftsFrom(rotation, first, { slots, rule }))
  for (const { index, isPast } of slots) {
    const covering = shifts.filter(({ from, to }) => from <= index && index < to)
    const held = model.part()
    if (isPast) rotation.fromPast(held, 1)
    rotation.setHeld(place, { person, slot: index }, held)
    model.row([[held, 1], ...terms(covering, -1)], { atLeast: 0, atMost: 0 })
    const begun = model.part()
    rotation.setBegun(place, { person, slot: index }, begun)
    const begins = shifts.filter(({ from }) => from === index)
    model.row([[begun, 1], ...terms(begins, -1)], { atLeast: 0, atMost: 0 })
  }
  for (const { index } of rotation.grid.slots) {
    const taken = shifts.filter(({ from, until }) => from <= index && index < until)
    if (taken.length > 1) model.row(terms(taken, 1), { atMost: 1 })
  }
}

function terms(shifts: readonly Shift[], factor: number): readonly Term[] {
  return shifts.map(({ column }) => [column, factor])
}

interface Given {
  readonly slots: readonly Slot[]
  readonly rule: MarshalShift
}

/** What was stood already stays as it was, and whoever stands there as the past ends may at least leave. */
function shiftsFrom(rotation: Rotation, first: Slot, given: Given): readonly Shift[] {
  const { problem } = rotation.grid
  const { slots, rule } = given
  const slotAt = (index: number) => slots.find((one) => one.index === index)
  if (stoodOn(slotAt(first.index - 1), first)) return []
  const early = first.fromMs === 0 ? 0 : earlyMs(problem)
  const shifts: Shift[] = []
  for (let at = first.index; ; at += 1) {
    const slot = slotAt(at)
    if (!slot || (at > first.index && endsShift(slot))) return shifts
    if (stoodOn(slot, slotAt(at + 1))) continue
    const isLong = slot.toAt - first.fromAt + early > (rule.atMostMs ?? Infinity)
    if (isLong && !slot.isPast) return shifts
    const cost = first.isPast ? 0 : -problem.dutyChangeLaps
    const column = rotation.model.column({ cost })
    const isOver = slot.isPast && hasEnded(rotation.grid.slots[at + 1])
    if (isOver) rotation.fromPast(column, 1)
    const until = untilOf(rotation, slot, { ...given, isOver })
    shifts.push({ from: first.index, to: at + 1, until, column })
    if (isOver) return shifts
  }
}

function stoodOn(before: Slot | undefined, slot: Slot | undefined): boolean {
  return before?.isPast === true && slot?.isPast === true && !endsShift(slot)
}

function hasEnded(next: Slot | undefined): boolean {
  return next === undefined || next.isPast || endsShift(next)
}

function untilOf(
  { grid }: Rotation,
  last: Slot,
  { slots, rule, isOver }: Given & { isOver: boolean },
): number {
  const byMs = earlyMs(grid.problem)
  const until = backFrom(grid.slots, last, { restMs: rule.restMs ?? 0, byMs })
  const again = slots.find((one) => isOver && one.isPast && one.index > last.index)
  return Math.min(until, again?.index ?? until)
}

/** One who stays has not left: the next shift follows on only over a break. */
function backFrom(
  slots: readonly Slot[],
  last: Slot,
  { restMs, byMs }: { restMs: number; byMs: number },
): number {
  let at = last.index + 1
  const next = slots[at]
  if (next && !endsShift(next)) at += 1
  for (; at < slots.length; at += 1) {
    const slot = slots[at]
    if (!slot || slot.fromAt - (slot.fromMs === 0 ? 0 : byMs) - last.toAt >= restMs) return at
  }
  return at
}

export function endsShift({ begins }: Slot): boolean {
  return begins === 'break' || begins === 'start'
}
