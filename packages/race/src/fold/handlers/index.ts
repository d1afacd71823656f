/** Every kind with what it does. */
import type { Kind } from '../../entry/kinds/index.ts'
import type { ReadEntry } from '../../entry/read.ts'
import type { Draft } from '../draft.ts'
import { carHandlers } from './car.ts'
import type { Handlers } from './handler.ts'
import { peopleHandlers } from './people.ts'
import { raceControlHandlers } from './race-control.ts'
import { recordHandlers } from './record.ts'

const HANDLERS: Handlers<Kind> = {
  ...raceControlHandlers,
  ...peopleHandlers,
  ...carHandlers,
  ...recordHandlers,
}

/** A handler whose kind is known to be the entry's. */
export type AnyHandler = (draft: Draft, entry: ReadEntry, at: number) => void

export function handlerOf(kind: Kind): AnyHandler {
  return HANDLERS[kind] as AnyHandler
}
