/** Documents and corrections were dealt with before the first handler ran; the rest is kept as said. */
import type { recordKinds } from '../../entry/kinds/record.ts'
import { said, type Handlers } from './handler.ts'

const dealtWith = (): void => undefined

export const recordHandlers: Handlers<keyof typeof recordKinds> = {
  'adopted.1': dealtWith,
  'correction.1': dealtWith,
  'advised.1': (draft, entry, at) => draft.record.advice.push(said(entry, at)),
  'note.1': (draft, entry, at) => draft.record.notes.push(said(entry, at)),
  'photograph.1': (draft, entry, at) => draft.record.photographs.push(said(entry, at)),
  'action.1': (draft, entry, at) => draft.record.actions.push(said(entry, at)),
}
