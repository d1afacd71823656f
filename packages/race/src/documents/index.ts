/** The documents a meeting may adopt, each with the schema its content must fit. */
import * as z from 'zod/mini'
import type { DocumentName } from '../entry/kinds/record.ts'
import { carSchema } from './car.ts'
import { crewSchema } from './crew.ts'
import { planSchema } from './plan.ts'
import { regulationsSchema } from './rules.ts'

export const documentSchemas = {
  rules: regulationsSchema,
  crew: crewSchema,
  car: carSchema,
  plan: planSchema,
  /** What other meetings taught. Kept whole; read by the builds that know its parts. */
  evidence: z.looseObject({}),
} as const satisfies Record<DocumentName, unknown>

export type DocumentContent<D extends DocumentName = DocumentName> = z.infer<
  (typeof documentSchemas)[D]
>
