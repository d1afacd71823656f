import type { Slot } from '../grid/slots.ts'
import { mandatoryStops } from '../rotation/mandatory.ts'
import type { RuleKind } from './rule-kind.ts'

/** Every mandatory stop lies in a window, and every window has one; both ends of a window belong to it. */
export interface StopWindows {
  readonly id: string
  readonly kind: 'stopWindows'
  readonly windows: readonly StopWindow[]
}

export interface StopWindow {
  readonly segment: string
  readonly fromMs: number
  readonly toMs: number
}

export const stopWindows: RuleKind<StopWindows> = {
  bars: ({ windows }) => ({ stop: (slot) => !windows.some((window) => isIn(slot, window)) }),
  rows: ({ id: tag, windows }, rotation) => {
    const stops = mandatoryStops(rotation)
    for (const { slot, column } of stops) {
      if (slot.stop && !slot.isPast && !windows.some((window) => isIn(slot, window))) {
        rotation.row([[column, 1]], { atMost: 0, tag })
      }
    }
    for (const { window, count } of stretchesOf(windows)) {
      const here = stops.filter(({ slot }) => isIn(slot, window))
      rotation.row(
        here.map(({ column }) => [column, 1] as const),
        { atLeast: count, tag },
      )
    }
  },
}

function isIn({ segment, fromMs }: Slot, window: StopWindow): boolean {
  return segment.id === window.segment && fromMs >= window.fromMs && fromMs <= window.toMs
}

/** A stop serves one window: in any stretch as many stops as windows lie in it (Hall's condition for intervals). */
function stretchesOf(windows: readonly StopWindow[]) {
  return windows.flatMap(({ segment, fromMs }) => {
    const ends = windows.filter((one) => one.segment === segment && one.toMs >= fromMs)
    return ends.flatMap(({ toMs }) => {
      const inside = windows.filter(
        (one) => one.segment === segment && one.fromMs >= fromMs && one.toMs <= toMs,
      )
      if (inside.length === 0) return []
      return [{ window: { segment, fromMs, toMs }, count: inside.length }]
    })
  })
}
