/** The wall of a meeting on a crew device: taken, given back, taken back. */
import { meSchema } from '@pitlamp/contract'
import { ask } from './ask.ts'

const path = (meeting: string) => `/api/meetings/${meeting}/wall` as const

export const takeWall = (meeting: string) => ask(meSchema, `POST ${path(meeting)}/take`, {})
export const giveBackWall = (meeting: string) =>
  ask(meSchema, `POST ${path(meeting)}/give-back`, {})
export const takeBackWall = (meeting: string, device: string) =>
  ask(meSchema, `POST ${path(meeting)}/take-back`, { device })
