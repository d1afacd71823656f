import { comes, turnsOf } from '../rotation/turns.ts'
import { mandatoryStops } from '../rotation/mandatory.ts'
import type { RuleKind } from './rule-kind.ts'

/** At every mandatory stop a stint ends and another begins: with somebody else, or with oneself where that counts. */
export interface ChangeAtStop {
  readonly id: string
  readonly kind: 'changeAtStop'
}

export const changeAtStop: RuleKind<ChangeAtStop> = {
  rows: ({ id: tag }, rotation) => {
    const turns = new Map(turnsOf(rotation).map((turn) => [turn.after, turn]))
    for (const { slot, column } of mandatoryStops(rotation)) {
      const turn = turns.get(slot.index)
      if (!turn || slot.isPast) continue
      const came = rotation.grid.drivers.flatMap(({ id }) => comes(rotation, id, turn))
      rotation.row([...came, [column, -1]], { atLeast: 0, tag })
    }
  },
}
