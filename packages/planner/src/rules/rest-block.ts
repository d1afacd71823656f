import { isOf, type Grid, type Stretch } from '../grid/grid.ts'
import type { Duty } from '../problem/problem.ts'
import { blocksOff } from '../rotation/blocks-off.ts'
import type { Rotation } from '../rotation/rotation.ts'
import type { RuleKind } from './rule-kind.ts'

/**
 * One unbroken rest for everybody who has any duty, breaks included, in meeting time and within the race; at the wall
 * and at the bench nobody rests, at a post only where marshalling is rest. Whoever can have no
 * such rest any more may have no duty.
 */
export interface RestBlock {
  readonly id: string
  readonly kind: 'restBlock'
  readonly who?: string
  readonly atLeastMs: number
  /** It lies in one of these; anywhere in the race where none are named. */
  readonly windows?: readonly Stretch[]
  readonly marshallingIsRest: boolean
}

export const restBlock: RuleKind<RestBlock> = {
  rows: ({ id: tag, who, atLeastMs: lengthMs, windows, marshallingIsRest }, rotation) => {
    const { grid } = rotation
    const off = { tag, lengthMs, windows: inRace(grid, windows) }
    const duties: readonly Duty[] = marshallingIsRest ? TIRING : [...TIRING, 'post']
    for (const { id: person } of grid.problem.people.filter((one) => isOf(one, who))) {
      const blocks = blocksOff(rotation, { ...off, person, duties })
      if (blocks.length > 0) rotation.row(blocks, { atLeast: 1, atMost: 1, tag })
      else hasNoDuty(rotation, person, tag)
    }
  },
}

const TIRING = ['controller', 'wall', 'bench'] as const

function inRace({ slots }: Grid, windows: readonly Stretch[] | undefined): readonly Stretch[] {
  const race = { fromAt: slots[0]?.fromAt ?? 0, toAt: slots.at(-1)?.toAt ?? 0 }
  return (windows ?? [race]).map(({ fromAt, toAt }) => ({
    fromAt: Math.max(fromAt, race.fromAt),
    toAt: Math.min(toAt, race.toAt),
  }))
}

/** Whoever has no duty at all is not asked to rest, and where there is no room for the rest nobody else can be. */
function hasNoDuty(rotation: Rotation, person: string, tag: string): void {
  for (const { index } of rotation.grid.slots) {
    for (const duty of [...TIRING, 'post'] as const) {
      const held = rotation.onDuty(person, duty, index)
      if (held.length > 0) rotation.row(held, { atMost: 0, tag })
    }
  }
}
