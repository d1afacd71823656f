/** What was decided by hand: rows like those of a rule, tagged with the pin. */
import type { Duty, Pin } from '../problem/problem.ts'
import type { Slot } from '../grid/slots.ts'
import type { Rotation } from './rotation.ts'

const DUTIES: readonly Duty[] = ['controller', 'post', 'wall', 'bench']

export function addPins(rotation: Rotation): void {
  for (const pin of rotation.grid.problem.pins) {
    if (pin.kind === 'stop') addStop(rotation, pin)
    else addStretch(rotation, pin)
  }
}

function addStop(rotation: Rotation, pin: Pin & { kind: 'stop' }): void {
  const { grid, stops } = rotation
  const slot = grid.slots.find((one) => one.segment.id === pin.segment && one.fromMs === pin.atMs)
  const column = slot && stops.get(slot.index)
  if (slot?.isPast) return
  rotation.row(column === undefined ? [] : [[column, 1]], { atLeast: 1, tag: pin.id })
}

function addStretch(rotation: Rotation, pin: Exclude<Pin, { kind: 'stop' }>): void {
  for (const slot of rotation.grid.slots) {
    if (slot.isPast || !liesIn(slot, pin)) continue
    if (pin.kind === 'span') {
      const held = rotation.onDuty(pin.person, pin.duty, slot.index)
      rotation.row(held, { atLeast: 1, tag: pin.id })
    } else {
      const any = DUTIES.flatMap((duty) => rotation.onDuty(pin.person, duty, slot.index))
      rotation.row(any, { atMost: 0, tag: pin.id })
    }
  }
}

export function liesIn(
  { segment, fromMs, toMs }: Slot,
  pin: Exclude<Pin, { kind: 'stop' }>,
): boolean {
  return segment.id === pin.segment && fromMs >= pin.fromMs && toMs <= pin.toMs
}
