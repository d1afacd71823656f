/** Opening the demo: a fictional meeting that runs by itself, through the public interface. */
import * as z from 'zod/mini'

export const openDemoSchema = z.strictObject({
  /** Meeting seconds in a real second. */
  speed: z.optional(z.number().check(z.minimum(1), z.maximum(120))),
})
export type OpenDemo = z.infer<typeof openDemoSchema>
