import { isOf } from '../grid/grid.ts'
import { times } from '../linear/model.ts'
import { comes, leaves, turnsOf } from '../rotation/turns.ts'
import type { RuleKind } from './rule-kind.ts'

/** After somebody of one category somebody of another must, or must not, drive; nobody follows themselves. */
export interface FollowingDrivers {
  readonly id: string
  readonly kind: 'followingDrivers'
  readonly first: string
  readonly must: boolean
  readonly then: string
}

export const followingDrivers: RuleKind<FollowingDrivers> = {
  rows: ({ id: tag, first, must, then }, rotation) => {
    const { drivers, slots } = rotation.grid
    for (const turn of turnsOf(rotation)) {
      if (slots[turn.after]?.isPast) continue
      for (const person of drivers.filter((one) => isOf(one, first))) {
        const left = leaves(rotation, person.id, turn)
        if (left.length === 0) continue
        const others = drivers.filter((one) =>
          must ? one === person || isOf(one, then) : one !== person && isOf(one, then),
        )
        const came = others.flatMap((one) => comes(rotation, one.id, turn))
        if (must) rotation.row([...left, ...times(came, -1)], { atMost: 0, tag })
        else rotation.row([...left, ...came], { atMost: 1, tag })
      }
    }
  },
}
