/**
 * The whole model. While rules stand, what they bar is not built; to find out which of them collide, it is built and
 * barred by tagged rows that can be taken away (`relaxable`).
 */
import { gridOf, type Grid } from '../grid/grid.ts'
import type { Slot } from '../grid/slots.ts'
import { ModelBuilder, type Term } from '../linear/model.ts'
import type { Problem } from '../problem/problem.ts'
import { addRules, asksForStops, barsOf, type RuleBars } from '../rules/index.ts'
import type { DutyWanted } from '../rules/duty-wanted.ts'
import type { MarshalShift } from '../rules/marshal-shift.ts'
import { addWishes } from '../wishes/index.ts'
import { addBalance } from './balance.ts'
import { addDriving } from './driving.ts'
import { addDuties } from './duties.ts'
import { addOrder } from './order.ts'
import { addPins } from './pins.ts'
import { addChangedDuties, changeCost } from './previous.ts'
import { Rotation } from './rotation.ts'
import { stintShapes, type StintShape } from './stints.ts'
import { addStops } from './stops.ts'
import { oneTaskEach } from './tasks.ts'

export function build(problem: Problem, relaxable = false): Rotation {
  const grid = gridOf(problem)
  const rotation = new Rotation(grid, new ModelBuilder())
  rotation.allDrive = !relaxable && problem.rules.some((rule) => allDrive(rule, grid))
  rotation.restKeepsApart = !relaxable && problem.rules.some(restsAll)
  if (!relaxable) rotation.shifts = shiftRule(problem)
  const bars = barsOf(grid)
  const built = relaxable ? [] : bars
  for (const stint of openStints(stintShapes(grid), built, grid)) {
    rotation.addStint(stint, stint.isPast ? 0 : stint.laps - changeCost(grid, stint))
  }
  addDriving(rotation)
  addStops(rotation, {
    allowed: (slot) => !built.some((one) => one.stop?.(slot)),
    withoutChange: problem.rules.some(asksForStops) || problem.pins.some(isStop),
  })
  const wanted = problem.rules.filter((rule): rule is DutyWanted => rule.kind === 'dutyWanted')
  addDuties(rotation, wanted, (who) => !built.some((one) => one.duty?.(who)))
  addOrder(rotation)
  if (!relaxable) addBalance(rotation)
  if (!relaxable) addChangedDuties(rotation)
  addRules(rotation)
  addPins(rotation)
  if (!relaxable) addWishes(rotation)
  if (relaxable) addBarRows(rotation, bars)
  oneTaskEach(rotation)
  return rotation
}

function allDrive(rule: Problem['rules'][number], { drivers }: Grid): boolean {
  return rule.kind === 'numberOfDrivers' && (rule.atLeast ?? 0) >= drivers.length
}

/** Where two rules limit shifts, their rows do. */
function shiftRule({ rules }: Problem): MarshalShift | undefined {
  const limits = rules.filter((rule): rule is MarshalShift => rule.kind === 'marshalShift')
  return limits.length === 1 && limits[0]?.atMostMs !== undefined ? limits[0] : undefined
}

function restsAll(rule: Problem['rules'][number]): boolean {
  if (rule.kind !== 'driverRest' || rule.who !== undefined) return false
  return (rule.atLeastMs ?? 0) > 0
}

function isStop({ kind }: Problem['pins'][number]): boolean {
  return kind === 'stop'
}

/** Whoever is at the controller as the past ends may at least leave it, whatever that breaks. */
function openStints(
  shapes: readonly StintShape[],
  bars: readonly RuleBars[],
  { slots }: Grid,
): readonly StintShape[] {
  const kept = shapes.filter((stint) => stint.isPast || !bars.some((one) => one.stint?.(stint)))
  const open = shapes.find(({ from, isPast }) => !isPast && slots[from]?.isPast)
  if (!open || kept.some(({ from }) => from === open.from)) return kept
  return [...kept, open]
}

/** What each rule bars, slot by slot, since only one stint covers a slot. */
function addBarRows(rotation: Rotation, bars: readonly RuleBars[]): void {
  for (const { id: tag, stint, duty, stop } of bars) {
    for (const slot of rotation.grid.slots) {
      const barred = stint
        ? rotation.stints.filter((one) => covers(one, slot) && !one.isPast && stint(one))
        : []
      rotation.row(
        barred.map(({ column }): Term => [column, 1]),
        { atMost: 0, tag },
      )
      const column = rotation.stops.get(slot.index)
      if (stop?.(slot) && column !== undefined && slot.begins === 'mayStop') {
        rotation.row([[column, 1]], { atMost: 0, tag })
      }
      if (duty) barDuties(rotation, { id: tag, duty }, slot)
    }
  }
}

function covers({ from, to }: StintShape, { index }: Slot): boolean {
  return from <= index && index < to
}

function barDuties(
  rotation: Rotation,
  { id: tag, duty }: Pick<Required<RuleBars>, 'id' | 'duty'>,
  slot: Slot,
): void {
  for (const person of rotation.grid.problem.people) {
    for (const place of rotation.places) {
      const held = rotation.heldAt(place, person.id, slot.index)
      if (slot.isPast || held.length === 0 || !duty({ person, duty: place.duty, slot })) continue
      rotation.row(held, { atMost: 0, tag })
    }
  }
}
