/** A press as a value: what it records, and what its undo calls it. */
import type { Body, Kind } from '@pitlamp/race'

export type ToRecord = {
  readonly [K in Kind]: { readonly kind: K; readonly body: Body<K>; readonly word: string }
}[Kind]
