/** What one kind of rule adds to a rotation. One file a kind; a new kind is one file and its line in `index.ts`. */
import type { Grid } from '../grid/grid.ts'
import type { Slot } from '../grid/slots.ts'
import type { Person } from '../problem/person.ts'
import type { Duty } from '../problem/problem.ts'
import type { Rotation } from '../rotation/rotation.ts'
import type { StintShape } from '../rotation/stints.ts'

export interface RuleKind<R> {
  /** What it forbids outright: such columns are not built while the rule stands. */
  readonly bars?: (rule: R, grid: Grid) => Bars
  /** Its rows; each is tagged with the rule. */
  readonly rows?: (rule: R, rotation: Rotation) => void
}

export interface Bars {
  readonly stint?: (stint: StintShape) => boolean
  readonly duty?: (who: { person: Person; duty: Duty; slot: Slot }) => boolean
  /** A stop to be chosen at the beginning of a slot. */
  readonly stop?: (slot: Slot) => boolean
}
