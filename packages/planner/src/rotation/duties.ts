/** Duties besides driving: who holds which in every slot, one thing at a time. */
import { canTake } from '../grid/grid.ts'
import type { Slot } from '../grid/slots.ts'
import { times } from '../linear/model.ts'
import type { Person } from '../problem/person.ts'
import type { Duty, Pin, Problem } from '../problem/problem.ts'
import type { DutyWanted } from '../rules/duty-wanted.ts'
import { hadDuty } from './past.ts'
import { liesIn } from './pins.ts'
import type { Place, Rotation, Where } from './rotation.ts'
import { addShifts } from './shifts.ts'

export type MayHold = (who: { person: Person; duty: Duty; slot: Slot }) => boolean

/** Columns for every place that a rule wants held or somebody is kept at, and for no more people than that. */
export function addDuties(
  rotation: Rotation,
  wanted: readonly DutyWanted[],
  mayHold: MayHold,
): void {
  const { grid, model } = rotation
  const first = model.columns.length
  rotation.places.push(...placesOf(grid.problem, wanted))
  const posts = rotation.places.filter(({ duty }) => duty === 'post')
  if (posts.length > 1) rotation.shifts = undefined
  for (const place of rotation.places) {
    for (const person of grid.problem.people) {
      const open = grid.slots.filter((slot) =>
        slot.isPast
          ? wasHeld(slot, place, person.id)
          : place.most(slot) > 0 &&
            canTake(person, place.duty, slot) &&
            mayHold({ person, duty: place.duty, slot }),
      )
      addHeld(rotation, place, { person: person.id, slots: open })
    }
    for (const slot of grid.slots) {
      const all = grid.problem.people.flatMap(({ id }) => rotation.heldAt(place, id, slot.index))
      if (!slot.isPast && all.length > 0) model.row(all, { atMost: place.most(slot) })
    }
  }
  for (let column = first; column < model.columns.length; column += 1) rotation.duties.add(column)
  oneAtATime(rotation)
}

function wasHeld(slot: Slot, { duty, post }: Place, person: string): boolean {
  return hadDuty(slot, duty).some((one) => one.person === person && one.post === post)
}

function addHeld(
  rotation: Rotation,
  place: Place,
  { person, slots }: { person: string; slots: readonly Slot[] },
): void {
  if (rotation.shifts && place.duty === 'post') {
    addShifts(rotation, place, { person, slots, rule: rotation.shifts })
    return
  }
  for (const slot of slots) {
    const column = rotation.model.column()
    if (slot.isPast) rotation.fromPast(column, 1)
    rotation.setHeld(place, { person, slot: slot.index }, column)
  }
  addBegins(rotation, place, person)
}

export function isIn(wanted: DutyWanted, { segment }: Slot): boolean {
  return isFor(wanted, segment.id)
}

function isFor({ segments }: DutyWanted, segment: string): boolean {
  return segments === undefined || segments.includes(segment)
}

type Kept = Extract<Pin, { kind: 'span' }>

/** Where a rule wants somebody, and without a name where somebody is kept and none does. */
function placesOf({ pins, rules }: Problem, wanted: readonly DutyWanted[]): readonly Place[] {
  const kept = pins.filter((pin): pin is Kept => pin.kind === 'span' && pin.duty !== 'controller')
  const named = (pin: Kept) =>
    wanted.filter((one) => one.duty === pin.duty && isFor(one, pin.segment))
  const unnamed = kept.filter((pin) => named(pin).every(({ post }) => post === undefined))
  const all = new Map<string, Where>()
  for (const { duty, post } of [
    ...wanted,
    ...unnamed.map(({ duty }) => ({ duty, post: undefined })),
  ])
    all.set(`${duty} ${post ?? ''}`, { duty, ...(post === undefined ? {} : { post }) })
  const relieved = rules.some((rule) => rule.kind === 'relief' && rule.before)
  return [...all.values()].map(({ duty, post }): Place => {
    const here = wanted.filter((one) => one.duty === duty && one.post === post)
    const keptHere = unnamed.filter((pin) => pin.duty === duty && post === undefined)
    const isRelieved = relieved && duty === 'post'
    const most = (slot: Slot) =>
      Math.max(
        keptHere.filter((pin) => liesIn(slot, pin) || (isRelieved && comesAfter(slot, pin))).length,
        ...here.filter((one) => isIn(one, slot)).map(({ count }) => count),
      )
    return { duty, most, ...(post === undefined ? {} : { post }) }
  })
}

function comesAfter({ segment, fromMs }: Slot, pin: Kept): boolean {
  return segment.id === pin.segment && fromMs >= pin.toMs
}

/** Taking up a duty has its small price; going on with it over a lane change has none. */
function addBegins(rotation: Rotation, place: Place, person: string): void {
  const { grid, model } = rotation
  for (const { index, isPast, begins } of grid.slots) {
    const held = rotation.heldAt(place, person, index)
    if (held.length === 0 || isPast) continue
    const isFresh = begins === 'start' || begins === 'break'
    const before = isFresh ? [] : rotation.heldAt(place, person, index - 1)
    const column = model.part({ cost: -grid.problem.dutyChangeLaps })
    rotation.setBegun(place, { person, slot: index }, column)
    model.row([[column, 1], ...times(held, -1), ...before], { atLeast: 0 })
  }
}

/** Of duties that do not go together, each holds one. */
function oneAtATime(rotation: Rotation): void {
  const { grid, model } = rotation
  const duties = [...new Set<Duty>(['controller', ...rotation.places.map(({ duty }) => duty)])]
  for (const { id } of grid.problem.people) {
    for (const { index, isPast } of grid.slots) {
      if (isPast) continue
      for (const group of apartGroups(duties, grid.problem.joined)) {
        const all = group.flatMap((duty) => rotation.onDuty(id, duty, index))
        if (all.length > 1) model.row(all, { atMost: 1 })
      }
    }
  }
}

/** All together where nothing is joined; else every pair that is not, and each duty with itself. */
function apartGroups(
  duties: readonly Duty[],
  joined: readonly (readonly [Duty, Duty])[],
): readonly (readonly Duty[])[] {
  if (joined.length === 0) return [duties]
  const goTogether = (one: Duty, other: Duty) =>
    joined.some((pair) => pair.includes(one) && pair.includes(other))
  return duties.flatMap((one, place) => [
    [one],
    ...duties
      .slice(place + 1)
      .filter((other) => !goTogether(one, other))
      .map((other) => [one, other]),
  ])
}
