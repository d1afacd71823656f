/** What somebody asks for, as it is written down. Changes are made in place. */
import type { CrewMember, PersonWish } from '@pitlamp/race'
import { freshId } from '../../planning/defaults.ts'

export type WishKind = PersonWish['kind']

const HOUR_MS = 3_600_000
const MOST_WISHES = 12

export const WISH_WORDS = [
  ['notAtEnd', 'not to drive first or last'],
  ['after', 'to drive after somebody'],
  ['before', 'to drive before somebody'],
  ['beside', 'to have somebody beside them'],
  ['noMoreThan', 'to drive no more than so long'],
  ['notBetween', 'not to drive between two times'],
] as const satisfies readonly (readonly [WishKind, string])[]

export interface About {
  /** Whom a wish may name: the first of them to begin with. */
  readonly others: readonly string[]
  /** Meeting time a stretch begins with. */
  readonly startAt: number
}

/** Nothing where there is nobody it could name. */
export function addWish(person: CrewMember, kind: WishKind, about: About): void {
  const list = person.wishList ?? []
  const wish = freshWish(kind, { ...about, id: freshId('w', list) })
  if (wish && list.length < MOST_WISHES) person.wishList = [...list, wish]
}

export function changeWish(person: CrewMember, wish: PersonWish): void {
  person.wishList = (person.wishList ?? []).map((one) => (one.id === wish.id ? wish : one))
}

export function takeWish(person: CrewMember, id: string): void {
  const left = (person.wishList ?? []).filter((one) => one.id !== id)
  person.wishList = left.length > 0 ? left : undefined
}

function freshWish(
  kind: WishKind,
  { id, others: [other], startAt }: About & { readonly id: string },
): PersonWish | undefined {
  switch (kind) {
    case 'notAtEnd':
      return { id, kind, which: 'first' }
    case 'noMoreThan':
      return { id, kind, atMostMs: 2 * HOUR_MS }
    case 'notBetween':
      return { id, kind, fromAt: startAt, toAt: startAt + HOUR_MS }
    case 'after':
    case 'before':
    case 'beside':
      return other === undefined ? undefined : { id, kind, other }
  }
}
