/**
 * Old shapes brought to today's, one pure function a step: `stopOut.1` → `stopOut.2`. They run at read;
 * stored rows are never rewritten. A released shape keeps its golden log in the tests for ever.
 */
export interface Shape {
  readonly kind: string
  readonly body: unknown
}
export type Upcaster = (body: unknown) => Shape
export type Upcasters = Readonly<Record<string, Upcaster>>

/** Steps of this build, by the kind they lift from. Every kind still has its first shape. */
const STEPS: Upcasters = {}

export function upcast(kind: string, body: unknown, steps: Upcasters = STEPS): Shape {
  let shape: Shape = { kind, body }
  for (let step = steps[shape.kind]; step; step = steps[shape.kind]) shape = step(shape.body)
  return shape
}
