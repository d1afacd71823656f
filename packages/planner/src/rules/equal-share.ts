import { MINUTE_MS, type Grid } from '../grid/grid.ts'
import type { Term } from '../linear/model.ts'
import type { Rotation } from '../rotation/rotation.ts'
import { segmentsDriven } from './driving-segments.ts'
import type { RuleKind } from './rule-kind.ts'
import { shareDown, shareUp } from './shares.ts'

/**
 * The same for everybody who drives, within a tolerance in thousandths, in time, or the narrower of both; none is 0.
 * Of time: the race clock of all segments but sit-outs ÷ those who drive. Of segments: those all drivers drive in,
 * added up, ÷ those who drive.
 */
export interface EqualShare {
  readonly id: string
  readonly kind: 'equalShare'
  readonly of: 'time' | 'segments'
  readonly tolerance?: number
  readonly toleranceMs?: number
}

export const equalShare: RuleKind<EqualShare> = {
  rows: (rule, rotation) => {
    const among = addAmong(rotation, rule.id)
    if (rule.of === 'time') ofTime(rule, rotation, among)
    else ofSegments(rule, rotation, among)
  },
}

/** For each number of drivers whether it is that many. */
type Among = readonly (readonly [drivers: number, column: number])[]

function addAmong(rotation: Rotation, tag: string): Among {
  const { grid, model } = rotation
  const among = grid.drivers.map((_, place) => [place + 1, model.column()] as const)
  const drives = grid.drivers.map((person): Term => [rotation.drives(person), -1])
  const one = among.map(([, column]): Term => [column, 1])
  const so = among.map(([drivers, column]): Term => [column, drivers])
  model.row(one, { atLeast: 1, atMost: 1, tag })
  model.row([...so, ...drives], { atLeast: 0, atMost: 0, tag })
  return among
}

function ofTime(rule: EqualShare, rotation: Rotation, among: Among): void {
  const { grid } = rotation
  const bounds = among.map(([drivers]) => boundsOf(rule, grid.runMs, drivers))
  const most = among.map(([, column], place): Term => [
    column,
    -(bounds[place]?.most ?? 0) / MINUTE_MS,
  ])
  const least = among.map(([, column], place): Term => [
    column,
    -(bounds[place]?.least ?? 0) / MINUTE_MS,
  ])
  const all = Math.max(0, ...bounds.map((one) => one.least)) / MINUTE_MS
  for (const person of grid.drivers) {
    const total = [rotation.totalMinutes(person), 1] as const
    rotation.row([total, ...most], { atMost: 0, tag: rule.id })
    const unless = [rotation.drives(person), -all] as const
    rotation.row([total, ...least, unless], { atLeast: -all, tag: rule.id })
  }
}

/** In whole milliseconds: a fraction of one is no difference. */
function boundsOf({ tolerance, toleranceMs }: EqualShare, runMs: number, drivers: number) {
  const [down, up] = [shareDown(runMs, 1_000, drivers), shareUp(runMs, 1_000, drivers)]
  const share = tolerance ?? (toleranceMs === undefined ? 0 : undefined)
  const least = [
    ...(share === undefined ? [] : [shareDown(runMs, 1_000 - share, drivers)]),
    ...(toleranceMs === undefined ? [] : [down - toleranceMs]),
  ]
  const most = [
    ...(share === undefined ? [] : [shareUp(runMs, 1_000 + share, drivers)]),
    ...(toleranceMs === undefined ? [] : [up + toleranceMs]),
  ]
  return { least: Math.max(0, ...least), most: Math.min(...most) }
}

/**
 * Whole numbers compared as thousandths of all of them, for whichever number of drivers it is. How many each has, the
 * fewest, the most and all of them are whole columns of their own: so that 24 among five are seen to be none at once.
 */
function ofSegments(
  { id: tag, tolerance = 0 }: EqualShare,
  rotation: Rotation,
  among: Among,
): void {
  const { grid, model } = rotation
  const [least, upper] = segmentsInAll(grid)
  const [fewest, most] = [model.column({ upper }), model.column({ upper })]
  const each = grid.drivers.map((person): Term => {
    const count = model.column({ upper })
    const mine = segmentsDriven(rotation, person, tag)
    model.row([...mine, [count, -1]], { atLeast: 0, atMost: 0, tag })
    model.row(between([count, most]), { atMost: 0, tag })
    const unless = [rotation.drives(person), -upper] as const
    model.row([...between([count, fewest]), unless], { atLeast: -upper, tag })
    return [count, 1]
  })
  const all = model.column({ lower: least, upper })
  model.row([...each, [all, -1]], { atLeast: 0, atMost: 0, tag })
  const [high, low] = [1_000 + tolerance, 1_000 - tolerance]
  for (const [drivers, column] of among) {
    const [free, owed] = [1_000 * drivers * upper, low * upper]
    const over = [
      [most, 1_000 * drivers],
      [all, -high],
      [column, free],
    ] as const
    model.row(over, { atMost: free, tag })
    const under = [
      [fewest, 1_000 * drivers],
      [all, -low],
      [column, -owed],
    ] as const
    model.row(under, { atLeast: -owed, tag })
  }
}

function between([one, other]: readonly [number, number]): readonly Term[] {
  return [
    [one, 1],
    [other, -1],
  ]
}

/** Of all drivers together: one for each segment still to be driven, or as many as may change in all of them. */
function segmentsInAll({ problem, slots, drivers }: Grid): readonly [least: number, most: number] {
  const inEach = problem.segments.map((one) => slots.filter((s) => s.segment === one && s.runs))
  const least = inEach.filter((some) => some.some(({ isPast }) => !isPast)).length
  const most = inEach.map((some) => Math.min(some.length, drivers.length))
  return [least, most.reduce((sum, one) => sum + one, 0)]
}
