/** What one kind of wish adds to a rotation. One file a kind, as with rules. */
import type { Rotation } from '../rotation/rotation.ts'

export interface WishKind<W> {
  /** Its rows, with a column for missing it: from 0, kept, to 1, which costs the wish's laps. */
  readonly rows: (wish: W, rotation: Rotation) => void
}

export interface AnyWish {
  readonly id: string
  readonly person: string
  /** What keeping it is worth, in laps. */
  readonly laps: number
}
