/** A meeting out of a copy that a screen wrote. */
import { broughtInSchema, type MeetingCopy } from '@pitlamp/contract'
import { ask } from './ask.ts'

export const bringIn = (copy: MeetingCopy) => ask(broughtInSchema, 'POST /api/copies', copy)
