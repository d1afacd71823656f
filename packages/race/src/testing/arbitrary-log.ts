/** Arbitrary well-formed bodies of every kind, read off the schemas, so that no kind is left out. */
import fc from 'fast-check'
import * as z from 'zod/mini'
import { kinds, type Kind } from '../entry/kinds/index.ts'
import { documentSchemas } from '../documents/index.ts'
import { DOCUMENTS } from '../entry/kinds/record.ts'
import type { Entry, RecordedEntry } from '../entry/envelope.ts'
import { DEVICES, id, PEOPLE } from './ids.ts'
import { GREEN } from './pressing.ts'

/** Few times, ids and lines, so that entries hit each other. */
const someTime = fc.integer({ min: 0, max: 120 }).map((step) => GREEN + step * 3_000)

/** What a schema is made of, as far as the schemas of this house go. */
interface Definition {
  readonly type: string
  readonly shape: Readonly<Record<string, z.core.$ZodType>>
  readonly innerType: z.core.$ZodType
  readonly element: z.core.$ZodType
  readonly options: readonly z.core.$ZodType[]
  readonly entries: Readonly<Record<string, string>>
  readonly values: readonly unknown[]
}

type Maker = (definition: Definition, schema: z.core.$ZodType) => fc.Arbitrary<unknown>

const MAKERS: Readonly<Record<string, Maker>> = {
  object: ({ shape }) =>
    fc.record(
      Object.fromEntries(Object.entries(shape).map(([key, part]) => [key, arbitraryOf(part)])),
      { noNullPrototype: true, requiredKeys: requiredKeys(shape) },
    ),
  optional: ({ innerType }) => arbitraryOf(innerType),
  nullable: ({ innerType }) => fc.option(arbitraryOf(innerType)),
  array: ({ element }) => fc.array(arbitraryOf(element), { minLength: 1, maxLength: 3 }),
  union: ({ options }) => fc.oneof(...options.map(arbitraryOf)),
  enum: ({ entries }) => fc.constantFrom(...Object.values(entries)),
  literal: ({ values }) => fc.constantFrom(...values),
  boolean: () => fc.boolean(),
  number: (_definition, schema) => arbitraryNumber(schema),
  string: (_definition, schema) => arbitraryString(schema),
  unknown: () => fc.jsonValue({ maxDepth: 2 }),
}

/** One schema's values. A sort of schema that is not in the table is a bug of this file and throws. */
export function arbitraryOf(schema: z.core.$ZodType): fc.Arbitrary<unknown> {
  const definition = schema._zod.def as unknown as Definition
  const make = MAKERS[definition.type]
  if (!make) throw new Error(`No arbitrary for ${definition.type}.`)
  return make(definition, schema)
}

function requiredKeys(shape: Definition['shape']): string[] {
  return Object.keys(shape).filter((key) => shape[key]?._zod.def.type !== 'optional')
}

/** Values that schemas of this kind may take; each schema is given those that it accepts. */
const NUMBERS = [0, 1, 2, 7, 400, 5_000, 45_000, 600_000, 1_200_000, -1, -5_000, -600_000]
const NAMES = ['Braid', '4', 'Rear tyre']
const IDS = [...[1, 2, 3, 4, 5, 6].map(id), ...Object.values(PEOPLE)]
const LINES = ['one', 'two', 'rest', '__proto__']
const HASHES = ['a'.repeat(64), 'b'.repeat(64)]

function arbitraryNumber(schema: z.core.$ZodType): fc.Arbitrary<unknown> {
  return accepts(schema, GREEN) ? someTime : oneOf(schema, NUMBERS)
}

/** What accepts a name with a space is words; the rest is an id, a line, or a hash. */
function arbitraryString(schema: z.core.$ZodType): fc.Arbitrary<unknown> {
  if (accepts(schema, 'Rear tyre')) return fc.constantFrom(...NAMES)
  return oneOf(schema, accepts(schema, 'one') ? LINES : [...IDS, ...HASHES])
}

function oneOf(schema: z.core.$ZodType, values: readonly unknown[]): fc.Arbitrary<unknown> {
  return fc.constantFrom(...values.filter((value) => accepts(schema, value)))
}

function accepts(schema: z.core.$ZodType, value: unknown): boolean {
  return z.safeParse(schema, value).success
}

const bodies = Object.fromEntries(
  Object.entries(kinds).map(([kind, schema]) => [kind, arbitraryOf(schema)]),
)

const adopted = fc
  .constantFrom(...DOCUMENTS)
  .chain((document) =>
    fc
      .tuple(
        bodies['adopted.1'] ?? fc.constant({}),
        arbitraryOf(documentSchemas[document] as z.core.$ZodType),
      )
      .map(([body, content]) => ({ ...(body as object), document, content })),
  )

/** Kinds that act on each other come more often than the rest. */
const LIVELY = [
  ...(['green.1', 'trackCall.1', 'powerOn.1', 'redFlag.1', 'segmentEnd.1', 'clockRead.1'] as const),
  ...(['stopIn.1', 'stopOut.1', 'handover.1', 'faultNoted.1', 'repairStarted.1'] as const),
  ...(['adopted.1', 'correction.1', 'correction.1'] as const),
]

/** A kind of this build with a body that its schema accepts. */
export const someStatement: fc.Arbitrary<{ readonly kind: string; readonly body: unknown }> = fc
  .constantFrom(...(Object.keys(kinds) as Kind[]), ...LIVELY, ...LIVELY)
  .chain((kind) =>
    (kind === 'adopted.1' ? adopted : (bodies[kind] ?? fc.constant({}))).map((body) => ({
      kind,
      body,
    })),
  )

/** Kinds of a later build. */
export const someUnknown = fc
  .constantFrom('wingBent.1', 'green.2', 'toString.1')
  .map((kind) => ({ kind, body: { whatever: true } }))

/** Recorded entries with ids 1, 2, 3 …, numbered per device, at times that meet and cross. */
export function someLog(
  statement: typeof someStatement = someStatement,
  maxLength = 25,
): fc.Arbitrary<readonly RecordedEntry[]> {
  const press = fc.record({
    statement,
    at: someTime,
    late: fc.integer({ min: -5_000, max: 60_000 }),
    device: fc.constantFrom(...Object.values(DEVICES)),
    role: fc.constantFrom('crew' as const, 'pitWall' as const, 'captain' as const),
    atBoundMs: fc.constantFrom(0, 40, 700),
  })
  return fc.array(press, { maxLength }).map((presses) => {
    const numbers = new Map<string, number>()
    return presses.map(
      ({ statement: { kind, body }, at, late, device, role, atBoundMs }, place) => {
        const n = (numbers.get(device) ?? 0) + 1
        numbers.set(device, n)
        const entry: Entry = {
          ...{ v: 1, id: id(place + 1), device, n, at, atBoundMs, epoch: 1, kind },
          body: JSON.stringify(body),
        }
        return { ...entry, seq: place + 1, recordedAt: at + late, role }
      },
    )
  })
}
