/** A crew device takes the wall of a meeting, and gives it back or is asked back. */
import * as z from 'zod/mini'
import { uuidV7 } from '@pitlamp/race'

export const takeBackWallSchema = z.strictObject({ device: uuidV7 })
export type TakeBackWall = z.infer<typeof takeBackWallSchema>
