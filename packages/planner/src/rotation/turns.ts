/** Where one stint follows another: within a slot's beginning, or over a break or a sit-out. */
import type { Term } from '../linear/model.ts'
import type { Rotation } from './rotation.ts'

/** Between the slot before and the slot after, both of which the car runs in. */
export interface Turn {
  readonly before: number
  readonly after: number
  /** Nobody can drive on over it. */
  readonly isBreak: boolean
}

export function turnsOf({ grid }: Rotation): readonly Turn[] {
  const running = grid.slots.filter(({ runs }) => runs)
  return running.slice(1).map(({ index }, place) => ({
    before: running[place]?.index ?? 0,
    after: index,
    isBreak: !grid.goesOnAt[index],
  }))
}

/** Whether somebody's stint is over at a turn. */
export function leaves(rotation: Rotation, person: string, { before }: Turn): readonly Term[] {
  return rotation.endsOf(person, before + 1)
}

/** Whether somebody's stint begins at a turn. */
export function comes(rotation: Rotation, person: string, { after }: Turn): readonly Term[] {
  return rotation.startsOf(person, after)
}
