/** Opening the demo: a fictional meeting that runs by itself, through the public interface. */
import * as z from 'zod/mini'

export const openDemoSchema = z.strictObject({
  /** Of a digital meeting, where nothing is said, or of one on fixed lanes. */
  of: z.optional(z.enum(['digital', 'lanes'])),
  /** Meeting seconds in a real second. */
  speed: z.optional(z.number().check(z.minimum(1), z.maximum(120))),
})
export type OpenDemo = z.infer<typeof openDemoSchema>
export type DemoOf = NonNullable<OpenDemo['of']>
