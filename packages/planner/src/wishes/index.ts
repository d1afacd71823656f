/** Every kind of wish. */
import type { Rotation } from '../rotation/rotation.ts'
import { beside, type Beside } from './beside.ts'
import { blockOff, type BlockOff } from './block-off.ts'
import { follows, type Follows } from './follows.ts'
import { noMoreThan, type NoMoreThan } from './no-more-than.ts'
import { notAtEnd, type NotAtEnd } from './not-at-end.ts'
import { notBetween, type NotBetween } from './not-between.ts'
import type { WishKind } from './wish-kind.ts'

export type Wish = Beside | BlockOff | Follows | NoMoreThan | NotAtEnd | NotBetween

const KINDS: { readonly [K in Wish['kind']]: WishKind<Extract<Wish, { kind: K }>> } = {
  beside,
  blockOff,
  follows,
  noMoreThan,
  notAtEnd,
  notBetween,
}

export function addWishes(rotation: Rotation): void {
  for (const wish of rotation.grid.problem.wishes) {
    const kind = KINDS[wish.kind] as WishKind<Wish>
    kind.rows(wish, rotation)
  }
}
