/** Arbitrary timelines of three segments and four people, with rules of every kind that can be checked. */
import fc from 'fast-check'
import { CHECKS } from '../checks/index.ts'
import type { Judged } from '../checks/bench.ts'
import type { CrewMember } from '../documents/crew.ts'
import type { Rule } from '../rules/index.ts'
import { RULE_KINDS } from '../rules/kinds/index.ts'
import type { TimelineSegment } from '../timeline/segments.ts'
import type { TimelineStop } from '../timeline/stops.ts'
import { byBeginning } from '../timeline/spans.ts'
import type { Timeline, TimelineSpan } from '../timeline/timeline.ts'
import { arbitraryOf } from './arbitrary-log.ts'
import { PEOPLE } from './ids.ts'
import { GREEN } from './pressing.ts'

const STEP = 30_000
const STEPS = 40
const LENGTH = STEPS * STEP
/** Words that arbitrary rules use for categories, tasks and posts. */
const WORDS = ['Braid', '4', 'Rear tyre'] as const

/** A segment, and for how long its race clock stood at which of its steps. */
interface Laid {
  readonly segment: TimelineSegment
  readonly stoodAt: number
  readonly stoodMs: number
}

const someSegments: fc.Arbitrary<readonly Laid[]> = fc
  .tuple(...['one', 'two', 'rest'].map((id) => fc.tuple(fc.constant(id), someSegment())))
  .map((all) => {
    let at = GREEN
    return all.map(([id, { waitMs, stoodAt, stoodMs, lane, after }], index) => {
      const startsAt = at + waitMs
      const endsAt = startsAt + LENGTH + stoodMs
      at = endsAt
      const lies = { index, startsAt, endsAt, lengthMs: LENGTH, over: false }
      const between = index === 0 ? ('start' as const) : after
      return { segment: { id, ...lies, lane, after: between }, stoodAt, stoodMs }
    })
  })

function someSegment() {
  return fc.record({
    waitMs: fc.constantFrom(0, 300_000),
    stoodAt: fc.integer({ min: 0, max: STEPS }),
    stoodMs: fc.constantFrom(0, 0, 45_000),
    lane: fc.constantFrom(4, 2, 'sitOut' as const, 'notDrawnYet' as const),
    after: fc.constantFrom('laneChange' as const, 'break' as const),
  })
}

/** Meeting time of a step of a segment. */
function atOf({ segment, stoodAt, stoodMs }: Laid, step: number): number {
  return segment.startsAt + step * STEP + (step > stoodAt ? stoodMs : 0)
}

type Stretch = readonly [from: number, to: number]
type Place = Pick<TimelineSpan, 'duty' | 'post'>

const PLACES: readonly Place[] = [
  { duty: 'controller' },
  { duty: 'post', post: '4' },
  { duty: 'post' },
  { duty: 'wall' },
]
const somePerson = fc.constantFrom(...Object.values(PEOPLE))

/** At each place of each segment one after the other, now and then with a gap. */
function inOrder(laid: readonly Laid[]): fc.Arbitrary<readonly TimelineSpan[]> {
  const edge = fc.record({
    step: fc.integer({ min: 0, max: STEPS }),
    person: fc.option(somePerson, { freq: 6 }),
  })
  const cuts = fc.array(edge, { maxLength: 5 }).map((edges) => {
    const sorted = [...edges].sort((a, b) => a.step - b.step)
    return sorted.map(({ step, person }, place): [string | null, Stretch] => [
      person,
      [step, sorted[place + 1]?.step ?? STEPS],
    ])
  })
  return fc
    .tuple(
      ...laid.flatMap((one) => PLACES.map((place) => cuts.map((cut) => ({ one, place, cut })))),
    )
    .map((all) =>
      all.flatMap(({ one, place, cut }, row) =>
        cut.flatMap(([person, stretch], index) =>
          person === null || stretch[1] <= stretch[0]
            ? []
            : [spanOf(one, { ...place, person, stretch, id: `${row}-${index}` })],
        ),
      ),
    )
}

/** Anybody anywhere, twice at once if it so happens. */
function anyhow(laid: readonly Laid[]): fc.Arbitrary<readonly TimelineSpan[]> {
  const some = fc.record({
    one: fc.constantFrom(...laid),
    place: fc.constantFrom(...PLACES),
    person: somePerson,
    from: fc.integer({ min: 0, max: STEPS }),
    to: fc.integer({ min: 0, max: STEPS }),
  })
  return fc
    .array(some, { maxLength: 25 })
    .map((all) =>
      all.map(({ one, place, person, from, to }, row) =>
        spanOf(one, { ...place, person, stretch: [from, to], id: `span-${row}` }),
      ),
    )
}

interface Of extends Place {
  readonly id: string
  readonly person: string
  readonly stretch: Stretch
}

function spanOf(laid: Laid, { stretch: [from, to], ...of }: Of): TimelineSpan {
  const clocks = { fromMs: from * STEP, toMs: to * STEP }
  const times = { fromAt: atOf(laid, from), toAt: atOf(laid, to) }
  return { ...of, segment: laid.segment.id, ...clocks, ...times, done: false }
}

function someStops(laid: readonly Laid[]): fc.Arbitrary<readonly TimelineStop[]> {
  const some = fc.record({
    one: fc.constantFrom(...laid),
    step: fc.integer({ min: 0, max: STEPS }),
    mandatory: fc.boolean(),
    tasks: fc.subarray([...WORDS]),
    lastedMs: fc.option(fc.constantFrom(5_000, 45_000, 90_000), { nil: undefined }),
  })
  return fc.array(some, { maxLength: 8 }).map((all) =>
    all
      .map(({ one, step, mandatory, tasks, lastedMs }, row): TimelineStop => {
        const at = atOf(one, step)
        const made = lastedMs === undefined ? {} : { lastedMs, outAt: at + lastedMs }
        const where = { segment: one.segment.id, atMs: step * STEP, at }
        return { id: `stop-${row}`, ...where, mandatory, tasks, done: false, ...made }
      })
      .sort((a, b) => a.at - b.at),
  )
}

const CHECKED = RULE_KINDS.filter(({ kind }) => !('notChecked' in CHECKS[kind]))
const DECIDING = RULE_KINDS.filter(({ kind }) =>
  ['countsAsDriving', 'clockPolicy', 'changeWithOneself'].includes(kind),
)

/** One rule of every kind that is checked, and some of those that decide what others count. */
const someRules: fc.Arbitrary<readonly Rule[]> = fc
  .tuple(
    fc.tuple(...CHECKED.map(({ schema }) => arbitraryOf(schema))),
    fc.array(fc.oneof(...DECIDING.map(({ schema }) => arbitraryOf(schema))), { maxLength: 3 }),
  )
  .map(([checked, deciding]) =>
    [...checked, ...deciding].map((rule, line): Rule => ({ ...(rule as Rule), id: `r${line}` })),
  )

const someCrew: fc.Arbitrary<CrewMember[]> = fc.tuple(
  ...Object.entries(PEOPLE).map(([name, id]) =>
    fc
      .record({
        categories: fc.subarray([...WORDS]),
        paceMs: fc.constantFrom(undefined, 7_000, 9_000),
        leaves: fc.option(fc.integer({ min: 0, max: STEPS })),
      })
      .map(({ categories, paceMs, leaves }): CrewMember => ({
        ...(paceMs === undefined ? {} : { paceMs }),
        ...(leaves === null ? {} : { there: [{ id: 'a', toAt: GREEN + leaves * STEP }] }),
        ...{ id, name, duties: [], categories },
      })),
  ),
)

/** Whoever hands over is gone before the next one is there; with `anyhow`, duties lie as they fall. */
export function someJudged(how: 'inOrder' | 'anyhow'): fc.Arbitrary<Judged> {
  return fc
    .tuple(someSegments, someRules, someCrew, fc.boolean())
    .chain(([laid, rules, people, isWhole]) =>
      fc
        .tuple((how === 'inOrder' ? inOrder : anyhow)(laid), someStops(laid))
        .map(([spans, stops]): Judged => {
          const segments = laid.map(({ segment }) => segment)
          const timeline: Timeline = {
            segments,
            spans: [...spans].sort(byBeginning),
            stops,
            isWhole,
            notDriving: [],
          }
          const plain = { name: 'Arbitrary', timeZone: 'UTC', programme: [] }
          return { regulations: { ...plain, rules: [...rules] }, crew: { people }, timeline }
        }),
    )
}
