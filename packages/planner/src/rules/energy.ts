import type { Term } from '../linear/model.ts'
import { allStops } from '../rotation/mandatory.ts'
import type { Rotation } from '../rotation/rotation.ts'
import type { Slot } from '../grid/slots.ts'
import type { RuleKind } from './rule-kind.ts'
import { shareDown } from './shares.ts'

/**
 * Running on one load: from green or a stop to the next stop or the segment's end; every stop fills the car, and the
 * last load leaves its share. Laps are reckoned at the quickest driver's pace, which errs on the safe side.
 */
export interface Energy {
  readonly id: string
  readonly kind: 'energy'
  readonly fullMs?: number
  readonly fullLaps?: number
  /** Thousandths. */
  readonly leftAtEnd?: number
}

export const energy: RuleKind<Energy> = {
  rows: (rule, rotation) => {
    const { problem } = rotation.grid
    const fullMs = Math.min(rule.fullMs ?? Infinity, lapsInTime(rule, rotation))
    const left = shareDown(fullMs, 1_000 - (rule.leftAtEnd ?? 0))
    const running = problem.segments.filter(({ lane }) => lane !== 'sitOut')
    for (const segment of running) {
      const slots = rotation.grid.slots.filter((slot) => slot.segment === segment)
      const isLast = segment === running.at(-1)
      for (const slot of slots) {
        if (slot.isPast) continue
        addWithin(rotation, rule.id, {
          slots,
          fromMs: slot.fromMs,
          fullMs,
          endMs: segment.lengthMs,
        })
      }
      if (isLast && Number.isFinite(left)) {
        const from = segment.lengthMs - left
        if (from > 0)
          addStop(
            rotation,
            rule.id,
            slots.filter(({ fromMs }) => fromMs >= from),
          )
      }
    }
  },
}

interface Within {
  readonly slots: readonly Slot[]
  readonly fromMs: number
  readonly fullMs: number
  readonly endMs: number
}

/** After any moment the car comes in before a full load is used up, if the segment lasts that long. */
function addWithin(
  rotation: Rotation,
  tag: string,
  { slots, fromMs, fullMs, endMs }: Within,
): void {
  if (fromMs + fullMs >= endMs) return
  addStop(
    rotation,
    tag,
    slots.filter((one) => one.fromMs > fromMs && one.fromMs <= fromMs + fullMs),
  )
}

function addStop(rotation: Rotation, tag: string, slots: readonly Slot[]): void {
  const stops = allStops(rotation).filter(({ slot }) => slots.includes(slot))
  rotation.row(
    stops.map(({ column }): Term => [column, 1]),
    { atLeast: 1, tag },
  )
}

function lapsInTime({ fullLaps }: Energy, { grid }: Rotation): number {
  if (fullLaps === undefined) return Infinity
  const quickest = Math.min(...grid.drivers.map(({ pace }) => pace?.lapMs ?? Infinity))
  return Math.floor(fullLaps * quickest)
}
