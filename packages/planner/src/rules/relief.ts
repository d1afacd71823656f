import type { Duty } from '../problem/problem.ts'
import { times } from '../linear/model.ts'
import type { Rotation } from '../rotation/rotation.ts'
import type { RuleKind } from './rule-kind.ts'

/**
 * The relief is at the post before the marshal leaves, by so much; until then it does nothing else. Nobody leaves without
 * one while the segment runs.
 */
export interface Relief {
  readonly id: string
  readonly kind: 'relief'
  readonly before: boolean
  readonly byMs?: number
}

export const relief: RuleKind<Relief> = {
  rows: ({ id: tag, before, byMs = 0 }, rotation) => {
    if (!before) return
    stayUntilRelieved(rotation, tag)
    if (byMs === 0) return
    const { grid, places } = rotation
    for (const place of places.filter(({ duty }) => duty === 'post')) {
      for (const { index, fromMs, isPast } of grid.slots) {
        if (fromMs === 0 || isPast) continue
        for (const { id, there = [] } of grid.problem.people) {
          const begun = rotation.begunAt(place, id, index)
          if (begun.length === 0) continue
          const comesAt = (grid.slots[index]?.fromAt ?? 0) - byMs
          const isThere =
            there.length === 0 ||
            there.some(
              ({ fromAt = -Infinity, toAt = Infinity }) => fromAt <= comesAt && toAt > comesAt,
            )
          if (!isThere) rotation.row(begun, { atMost: 0, tag })
          for (const duty of BUSY) {
            const busy = rotation.onDuty(id, duty, index - 1)
            if (busy.length > 0) rotation.row([...begun, ...busy], { atMost: 1, tag })
          }
        }
      }
    }
  },
}

function stayUntilRelieved(rotation: Rotation, tag: string): void {
  const { slots, problem } = rotation.grid
  for (const place of rotation.places.filter(({ duty }) => duty === 'post')) {
    const at = (slot: number) =>
      problem.people.flatMap(({ id }) => rotation.heldAt(place, id, slot))
    for (const slot of slots) {
      if (slot.fromMs === 0 || slot.isPast) continue
      const [before, now] = [at(slot.index - 1), at(slot.index)]
      // In the past a relief was there beside the one it came for.
      if (slots[slot.index - 1]?.isPast) {
        rotation.row(now, { atLeast: Math.min(before.length, place.most(slot)), tag })
      } else rotation.row([...now, ...times(before, -1)], { atLeast: 0, tag })
    }
  }
}

const BUSY: readonly Duty[] = ['controller', 'post', 'wall', 'bench']
