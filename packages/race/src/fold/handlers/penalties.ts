/** Penalties, from given to served or withdrawn. */
import type { EntryOf } from '../../entry/read.ts'
import type { Draft, PenaltyDraft } from '../draft.ts'
import { alreadySo, outOfPlace, said, type Handler } from './handler.ts'

export const penalty: Handler<'penalty.1'> = (draft, entry, at) => {
  draft.raceControl.penalties.set(entry.id, { ...said(entry, at) })
}

export const penaltyServed: Handler<'penaltyServed.1'> = (draft, entry, at) => {
  const found = namedBy(draft, entry)
  if (found) found.servedAt = at
}

export const penaltyWithdrawn: Handler<'penaltyWithdrawn.1'> = (draft, entry, at) => {
  const found = namedBy(draft, entry)
  if (found) found.withdrawnAt = at
}

function namedBy(
  draft: Draft,
  entry: EntryOf<'penaltyServed.1' | 'penaltyWithdrawn.1'>,
): PenaltyDraft | undefined {
  const named = entry.body.penalty
  const found = draft.raceControl.penalties.get(draft.holders.get(named) ?? named)
  if (!found) {
    outOfPlace(draft, [entry.id], 'A penalty was served or withdrawn that is not in the log.')
    return undefined
  }
  if (found.servedAt === undefined && found.withdrawnAt === undefined) return found
  alreadySo(draft, [found.entry, entry.id], 'This penalty was already served or withdrawn.')
  return undefined
}
