import type { Slot } from '../grid/slots.ts'
import { times, type Term } from '../linear/model.ts'
import { earlyMs } from '../rotation/early.ts'
import { endsShift } from '../rotation/shifts.ts'
import type { Rotation } from '../rotation/rotation.ts'
import type { RuleKind } from './rule-kind.ts'

/** Length of a shift at posts and rest between two, in meeting time; a shift goes on over a lane change. */
export interface MarshalShift {
  readonly id: string
  readonly kind: 'marshalShift'
  readonly atMostMs?: number
  readonly restMs?: number
}

export const marshalShift: RuleKind<MarshalShift> = {
  rows: (rule, rotation) => {
    if (rotation.shifts === rule) return
    for (const { id } of rotation.grid.problem.people) {
      const posts = rotation.grid.slots.map(({ index }) => rotation.onDuty(id, 'post', index))
      if (posts.every((held) => held.length === 0)) continue
      atMost(rule, rotation, posts)
      rests(rule, rotation, posts)
    }
  },
}

type Posts = readonly (readonly Term[])[]

/** From each slot the shortest row of slots that is too long. */
function atMost({ id: tag, atMostMs }: MarshalShift, rotation: Rotation, posts: Posts): void {
  if (atMostMs === undefined) return
  const { slots, problem } = rotation.grid
  for (const first of slots) {
    const early = comesEarly(first, earlyMs(problem))
    let last = first
    while (last.toAt - first.fromAt + early <= atMostMs) {
      const next = slots[last.index + 1]
      if (!next || endsShift(next)) break
      last = next
    }
    if (last.toAt - first.fromAt + early <= atMostMs || last.isPast) continue
    const row = posts.slice(first.index, last.index + 1)
    const isFresh = early === 0 ? [] : times(posts[first.index - 1] ?? [], -1)
    rotation.row([...row.flat(), ...isFresh], { atMost: row.length - 1, tag })
  }
}

/** Whoever leaves a post comes back to none before the rest is over. */
function rests({ id: tag, restMs = 0 }: MarshalShift, rotation: Rotation, posts: Posts): void {
  if (restMs === 0) return
  const { slots, problem } = rotation.grid
  for (const last of slots) {
    const next = slots[last.index + 1]
    const left = posts[last.index] ?? []
    if (!next || left.length === 0) continue
    const stays = endsShift(next) ? [] : times(posts[next.index] ?? [], -1)
    for (const slot of slots.slice(next.index + (endsShift(next) ? 0 : 1))) {
      if (slot.fromAt - comesEarly(slot, earlyMs(problem)) - last.toAt >= restMs) break
      const back = posts[slot.index] ?? []
      if (slot.isPast || back.length === 0) continue
      rotation.row([...left, ...stays, ...back], { atMost: 1, tag })
    }
  }
}

function comesEarly({ fromMs }: Slot, byMs: number): number {
  return fromMs === 0 ? 0 : byMs
}
