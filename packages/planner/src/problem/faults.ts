/** What is wrong with a problem before anybody tries to solve it: a closed list, which the caller puts into words. */
import { canTake, gridOf, isOf, type Grid } from '../grid/grid.ts'
import type { Problem } from './problem.ts'

export type Fault =
  | { readonly kind: 'noTime' }
  | { readonly kind: 'nobodyDrives' }
  | { readonly kind: 'tooMuch'; readonly slots: number }
  | { readonly kind: 'badNumber'; readonly path: string; readonly value: number }
  | { readonly kind: 'idTwice'; readonly id: string }
  | { readonly kind: 'aboutNobody'; readonly id: string; readonly who: string }
  | { readonly kind: 'nowhere'; readonly id: string; readonly segment: string }
  | NobodyThere

/** Nobody who can drive is there for this stretch. */
export interface NobodyThere {
  readonly kind: 'nobodyThere'
  readonly segment: string
  readonly fromMs: number
  readonly toMs: number
}

/** More slots than this are no rotation: a grid of a second, or a length in the wrong unit. */
const MOST_SLOTS = 1_000

/** Nothing where it can be tried. Bad numbers are said alone: everything else would follow from them. */
export function faultsOf(problem: Problem): readonly Fault[] {
  const numbers = badNumbers(problem, '')
  if (numbers.length > 0) return numbers
  if (!problem.segments.some(({ lengthMs, lane }) => lengthMs > 0 && lane !== 'sitOut')) {
    return [{ kind: 'noTime' }]
  }
  const slots = problem.segments.reduce((sum, one) => sum + timesOf(one), 0)
  if (slots > MOST_SLOTS) return [{ kind: 'tooMuch', slots }]
  const grid = gridOf(problem)
  return [...twice(problem), ...aboutNobody(problem), ...nowhere(problem), ...nobody(grid)]
}

function timesOf({ lengthMs, gridMs, ...more }: Problem['segments'][number]): number {
  const { cutsMs = [], mayStopAtMs = [], stops } = more
  const onGrid = gridMs === undefined ? 0 : gridMs > 0 ? Math.ceil(lengthMs / gridMs) : Infinity
  return 1 + onGrid + cutsMs.length + mayStopAtMs.length + stops.length
}

/** Numbers that are none, or that are below 0: nothing in a problem is, but what a lane adds and a time of day. */
function badNumbers(value: unknown, path: string): readonly Fault[] {
  if (typeof value === 'number') {
    const mayBeBelow = path.endsWith('At') || path.includes('laneAddsMs') || path.endsWith('Ms.')
    const isBad = !Number.isFinite(value) || (value < 0 && !mayBeBelow)
    const isNoLap = path.endsWith('lapMs') && value === 0
    return isBad || isNoLap ? [{ kind: 'badNumber', path, value }] : []
  }
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([name, part]) =>
    badNumbers(part, path === '' ? name : `${path}.${name}`),
  )
}

function twice({ rules, wishes, pins }: Problem): readonly Fault[] {
  const ids = [...rules, ...wishes, ...pins].map(({ id }) => id)
  const again = ids.filter((id, place) => ids.indexOf(id) !== place)
  return [...new Set(again)].map((id) => ({ kind: 'idTwice', id }))
}

/** A category nobody is of, a person nobody knows. */
function aboutNobody(problem: Problem): readonly Fault[] {
  const { rules, wishes, pins, people } = problem
  const isSomebody = (name: string) => people.some(({ id }) => id === name)
  const isCategory = (who: string) => people.some((person) => isOf(person, who))
  const fault = (id: string, who: string): Fault => ({ kind: 'aboutNobody', id, who })
  const ofRules = rules.flatMap((rule) => {
    const categories = ['who', 'first', 'then'] as const
    const named = categories.flatMap((part) => (part in rule ? [partOf(rule, part)] : []))
    const person = partOf(rule, 'person')
    return [
      ...named.filter((who) => who !== undefined && !isCategory(who)),
      ...(person !== undefined && !isSomebody(person) ? [person] : []),
    ].flatMap((who) => (who === undefined ? [] : [fault(rule.id, who)]))
  })
  const ofWishes = [...wishes, ...pins].flatMap((one) =>
    (['person', 'other'] as const).flatMap((part) => {
      const who = partOf(one, part)
      return who === undefined || isSomebody(who) ? [] : [fault(one.id, who)]
    }),
  )
  return [...ofRules, ...ofWishes]
}

function partOf(of: object, name: string): string | undefined {
  const part = (of as Readonly<Record<string, unknown>>)[name]
  return typeof part === 'string' ? part : undefined
}

function nowhere({ rules, pins, segments }: Problem): readonly Fault[] {
  const isThere = (name: string) => segments.some(({ id }) => id === name)
  const named = [
    ...pins.map(({ id, segment }) => [id, segment] as const),
    ...rules.flatMap((rule) => {
      const some = 'segments' in rule ? (rule.segments ?? []) : []
      const windows = rule.kind === 'stopWindows' ? rule.windows.map(({ segment }) => segment) : []
      return [...some, ...windows].map((segment) => [rule.id, segment] as const)
    }),
  ]
  return named
    .filter(([, segment]) => !isThere(segment))
    .map(([id, segment]) => ({ kind: 'nowhere', id, segment }))
}

function nobody(grid: Grid): readonly Fault[] {
  if (grid.drivers.length === 0) return [{ kind: 'nobodyDrives' }]
  const empty = grid.slots.filter(
    (slot) =>
      slot.runs && !slot.isPast && !grid.drivers.some((one) => canTake(one, 'controller', slot)),
  )
  const faults: NobodyThere[] = []
  for (const { segment, fromMs, toMs } of empty) {
    const last = faults.at(-1)
    if (last?.segment === segment.id && last.toMs === fromMs) {
      faults[faults.length - 1] = { ...last, toMs }
    } else faults.push({ kind: 'nobodyThere', segment: segment.id, fromMs, toMs })
  }
  return faults
}
