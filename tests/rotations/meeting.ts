/** Random meetings of a size, with any mix of rules, stops given or to be chosen, wishes and lines that are kept. */
import type { WorkOut } from '@pitlamp/contract'
import type { Rule } from '@pitlamp/race'
import fc from 'fast-check'
import { MINUTE, personId, type Given } from '../../server/src/work/testing/meant.ts'
import { crew } from './crew.ts'
import { drivingRules } from './driving-rules.ts'
import { marshalRules, stopRules } from './other-rules.ts'
import { between, type Room } from './parts.ts'

export interface Meeting {
  readonly given: Given
  readonly asked: Partial<WorkOut>
}

export interface Size {
  /** Segments, and slots in each. */
  readonly segments: readonly [least: number, most: number]
  readonly slots: readonly [least: number, most: number]
  readonly people: readonly [least: number, most: number]
  /** Rules only: what the exhaustive search knows. */
  readonly isPlain?: true
}

export const SIZES = {
  /** So small that every rotation can be tried. */
  '4 × 3': { segments: [1, 2], slots: [2, 2], people: [2, 3], isPlain: true },
  '12 × 4': { segments: [1, 3], slots: [2, 4], people: [2, 4] },
  '24 × 6': { segments: [4, 4], slots: [6, 6], people: [6, 6] },
  '48 × 8': { segments: [8, 8], slots: [6, 6], people: [8, 8] },
} as const satisfies Readonly<Record<string, Size>>

export type SizeName = keyof typeof SIZES

interface Shape extends Room {
  readonly between: 'laneChange' | 'break'
  readonly lanes: readonly (number | 'sitOut')[]
  readonly isChosen: boolean
  readonly isPlain: boolean
}

export function meetings(size: Size): fc.Arbitrary<Meeting> {
  return shapes(size).chain((shape) => fc.record({ given: givenOf(shape), asked: askedOf(shape) }))
}

function shapes(size: Size): fc.Arbitrary<Shape> {
  return fc
    .record({
      segments: fc.array(between(...size.slots), {
        ...{ minLength: size.segments[0], maxLength: size.segments[1] },
      }),
      people: between(...size.people),
      slotMs: fc.constantFrom(15, 20, 30).map((minutes) => minutes * MINUTE),
      between: fc.constantFrom('laneChange' as const, 'break' as const),
      sitOut: fc.option(between(1, 7), { nil: undefined, freq: 2 }),
      ...{ isTight: fc.boolean(), isChosen: fc.boolean() },
      isPlain: fc.constant(size.isPlain === true),
    })
    .map(({ sitOut, ...shape }) => {
      const slots = shape.segments.reduce((sum, one) => sum + one, 0)
      const lanes = shape.segments.map((_, place) => (place === sitOut ? 'sitOut' : place + 1))
      const raceMs = slots * shape.slotMs
      return { ...shape, lanes, slots, raceMs, fairMs: raceMs / shape.people }
    })
}

function givenOf(shape: Shape): fc.Arbitrary<Given> {
  const { segments, slotMs, raceMs, lanes } = shape
  const endAt = raceMs + (segments.length - 1) * 5 * MINUTE
  return fc
    .record({
      people: crew(shape, { endAt, isPlain: shape.isPlain }),
      rules: rules(shape),
      stops: stops(shape),
      spans: kept(shape),
    })
    .map((given) => ({
      ...{ ...given, lanes, between: shape.between, midnightAt: 0 },
      segments: segments.map((slots) => (slots * slotMs) / MINUTE),
    }))
}

/** Loose rules are fewer: each by itself can be kept, and not all of them together. */
function rules(room: Shape): fc.Arbitrary<readonly Rule[]> {
  const all = [...drivingRules(room), ...stopRules(room), ...marshalRules(room)]
  return fc
    .uniqueArray(between(0, all.length - 1), { minLength: 1, maxLength: room.isTight ? 12 : 8 })
    .chain((places) => fc.tuple(...places.flatMap((place) => all[place] ?? [])))
    .map((values) => values.map((value, place) => ({ id: `r${place}`, ...value }) as Rule))
}

type Stops = NonNullable<Given['stops']>

/** Of the edges between slots some: where stops are chosen few, one of them kept. */
function stops({ segments, slotMs, isChosen, isPlain }: Shape): fc.Arbitrary<Stops> {
  const edges = segments.flatMap((slots, place) =>
    Array.from({ length: slots - 1 }, (_, edge) => [place + 1, edge + 1] as const),
  )
  const most = isChosen ? Math.min(3, edges.length) : edges.length
  const least = isChosen ? 0 : Math.ceil(edges.length / 2)
  const more = fc.record({
    mandatory: between(0, 9).map((roll) => isPlain || roll > 0),
    task: isPlain ? fc.constant(undefined) : fc.constantFrom(undefined, 'motor', 'tyres'),
    lateMs: fc.constantFrom(0, 0, isChosen ? 5 * MINUTE : 0),
  })
  return fc.subarray(edges, { minLength: least, maxLength: most }).chain((some) =>
    fc.tuple(...some.map(() => more)).map((mores) =>
      some.map(([segment, edge], place) => {
        const { mandatory = true, task, lateMs = 0 } = mores[place] ?? {}
        const does = task === undefined ? {} : { task }
        const isKept = isChosen && place === 0 && !isPlain ? { pinned: true as const } : {}
        return [
          segment,
          (edge * slotMs + lateMs) / MINUTE,
          { mandatory, ...does, ...isKept },
        ] as const
      }),
    ),
  )
}

type Spans = NonNullable<Given['spans']>

/** Lines kept by hand, often none. */
function kept(shape: Shape): fc.Arbitrary<Spans> {
  const { segments, slotMs, people, lanes, isPlain } = shape
  const line = fc
    .record({
      ...{
        place: between(0, segments.length - 1),
        from: between(0, 3),
        who: between(0, people - 1),
      },
      duty: fc.constantFrom(
        'controller' as const,
        'controller' as const,
        'offDuty' as const,
        'post' as const,
      ),
      cut: fc.constantFrom(0, 0, 0, slotMs / 3),
    })
    .map(({ place, from, who, cut, duty }) => {
      const fromMs = Math.min(from, (segments[place] ?? 1) - 1) * slotMs
      const isOut = lanes[place] === 'sitOut' && duty === 'controller'
      return {
        ...{ duty: isOut ? ('offDuty' as const) : duty, person: personId(who) },
        ...{ segment: `s${place + 1}`, fromMs: fromMs + cut, toMs: fromMs + slotMs },
        pinned: true as const,
      }
    })
  return fc.oneof(
    { weight: 3, arbitrary: fc.constant<Spans>([]) },
    {
      weight: isPlain ? 0 : 1,
      arbitrary: fc
        .array(line, { minLength: 1, maxLength: 2 })
        .map((all) => all.map((one, place) => ({ id: `k${place + 1}`, ...one }))),
    },
  )
}

function askedOf({ slotMs, isChosen, people, isPlain }: Shape): fc.Arbitrary<Meeting['asked']> {
  const all = isPlain ? (['post'] as const) : (['post', 'wall', 'bench'] as const)
  const duties = fc.subarray([...all], { maxLength: people > 3 ? 2 : 1 })
  return fc
    .record({
      duties: fc.oneof(fc.constant<WorkOut['duties']>([]), duties),
      lapsPerHour: fc.constantFrom(0, 40),
      toleranceMs: fc.constantFrom(0, 15 * MINUTE),
      isCut: fc.boolean(),
    })
    .map(({ duties: some, isCut, ...balance }) => ({
      ...{ duties: some, balance },
      ...(isChosen ? { stopEveryMs: slotMs } : isCut ? { changeEveryMs: slotMs } : {}),
    }))
}
