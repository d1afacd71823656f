/** The rotation while it is put together: its columns by person, slot and duty, and the model they belong to. */
import { MINUTE_MS, type Grid } from '../grid/grid.ts'
import type { Slot } from '../grid/slots.ts'
import type { ModelBuilder, Term, ToAdd } from '../linear/model.ts'
import type { Person } from '../problem/person.ts'
import type { Duty } from '../problem/problem.ts'
import type { MarshalShift } from '../rules/marshal-shift.ts'
import type { StintShape } from './stints.ts'

export interface Stint extends StintShape {
  readonly column: number
}

/** Somewhere a duty is held: all posts without a name are one place. */
export interface Where {
  readonly duty: Duty
  readonly post?: string
}

export interface Place extends Where {
  /** No more people than that are at it in a slot to come. */
  readonly most: (slot: Slot) => number
}

/** Slots a stint covers on average. */
const LONG_SLOTS = 6

export class Rotation {
  readonly grid: Grid
  readonly model: ModelBuilder
  readonly stints: Stint[] = []
  /** Stop at the beginning of a slot, given or to be chosen. */
  readonly stops = new Map<number, number>()
  /** Standing without a change of driver at a stop to be chosen, by person and slot. */
  readonly waits = new Map<string, number>()
  readonly places: Place[] = []
  /** The rule whose shifts are columns of their own. */
  shifts: MarshalShift | undefined
  /** Everybody has to rest between two stints, so that no two of one driver can follow on. */
  restKeepsApart = false
  /** A rule that is not to be relaxed has everybody drive. */
  allDrive = false
  /** What may be done at a stop to be made, by its slot. */
  readonly tasks = new Map<number, Map<string, number>>()
  /** Columns of the other duties. */
  readonly duties = new Set<number>()
  /** Columns that the past has decided, and what they are worth at least. */
  readonly past = new Map<number, number>()
  /** Whoever was at the controller as the past ended: exactly one of these comes true. */
  readonly #open: Stint[] = []
  readonly #of = new Map<string, Stint[]>()
  readonly #covering = new Map<number, Stint[]>()
  #slotsCovered = 0
  readonly #begin = new Map<string, Stint[]>()
  readonly #end = new Map<string, Stint[]>()
  readonly #driving = new Map<string, number>()
  readonly #held = new Map<string, number>()
  readonly #begun = new Map<string, number>()
  readonly #drives = new Map<string, number>()
  readonly #totals = new Map<string, number>()

  constructor(grid: Grid, model: ModelBuilder) {
    this.grid = grid
    this.model = model
  }

  /** Stints cover so many slots that sums over them would be the larger model. */
  get isLong(): boolean {
    return this.#slotsCovered > LONG_SLOTS * this.stints.length
  }

  addStint(shape: StintShape, cost: number): void {
    const column = this.model.column({ cost })
    const stint = { ...shape, column }
    this.stints.push(stint)
    this.#slotsCovered += shape.to - shape.from
    push(this.#of, shape.person.id, stint)
    for (let slot = shape.from; slot < shape.to; slot += 1) push(this.#covering, slot, stint)
    push(this.#begin, key(shape.person.id, shape.from), stint)
    push(this.#end, key(shape.person.id, shape.to), stint)
    if (shape.isPast) this.fromPast(column, 1)
    else if (this.grid.slots[shape.from]?.isPast) this.#open.push(stint)
  }

  /** Decided by what was raced. */
  fromPast(column: number, value: number): void {
    this.model.fix(column, value)
    this.past.set(column, value)
  }

  startsOf(person: string, slot: number): readonly Term[] {
    return (this.#begin.get(key(person, slot)) ?? []).map(({ column }) => [column, 1])
  }

  /** Stints whose last slot is the one before. */
  endsOf(person: string, slot: number): readonly Term[] {
    return (this.#end.get(key(person, slot)) ?? []).map(({ column }) => [column, 1])
  }

  stintsOf(person: string): readonly Stint[] {
    return this.#of.get(person) ?? []
  }

  setDriving(person: string, slot: number, column: number): void {
    this.#driving.set(key(person, slot), column)
  }

  /** Whether somebody drives in a slot. */
  driving(person: string, slot: number): readonly Term[] {
    const column = this.#driving.get(key(person, slot))
    return column === undefined ? [] : [[column, 1]]
  }

  /** Stints in which a slot lies. */
  covering(slot: number): readonly Stint[] {
    return this.#covering.get(slot) ?? []
  }

  setHeld(place: Where, who: { person: string; slot: number }, column: number): void {
    this.#held.set(heldKey(place, who.person, who.slot), column)
  }

  heldAt(place: Where, person: string, slot: number): readonly Term[] {
    const column = this.#held.get(heldKey(place, person, slot))
    return column === undefined ? [] : [[column, 1]]
  }

  setBegun(place: Where, who: { person: string; slot: number }, column: number): void {
    this.#begun.set(heldKey(place, who.person, who.slot), column)
  }

  /** Whether somebody comes to a place with a slot. */
  begunAt(place: Where, person: string, slot: number): readonly Term[] {
    const column = this.#begun.get(heldKey(place, person, slot))
    return column === undefined ? [] : [[column, 1]]
  }

  /** One person on a duty in a slot, wherever. */
  onDuty(person: string, duty: Duty, slot: number): readonly Term[] {
    if (duty === 'controller') return this.driving(person, slot)
    return this.places
      .filter((place) => place.duty === duty)
      .flatMap((place) => this.heldAt(place, person, slot))
  }

  /** Whether somebody drives at all in the race. */
  drives({ id }: Person): number {
    const made = this.#drives.get(id)
    if (made !== undefined) return made
    const column = this.model.column({ lower: this.allDrive ? 1 : 0 })
    this.#drives.set(id, column)
    if (this.allDrive) return column
    const stints = this.stintsOf(id)
    const all = stints.map((stint): Term => [stint.column, 1])
    this.model.row([...all, [column, -1]], { atLeast: 0 })
    for (const { index } of this.grid.slots) {
      const here = this.driving(id, index)
      if (here.length > 0) this.model.row([...here, [column, -1]], { atMost: 0 })
    }
    return column
  }

  /** What somebody drives in all, in minutes: one column. */
  totalMinutes({ id }: Person): number {
    const made = this.#totals.get(id)
    if (made !== undefined) return made
    const stints = this.stintsOf(id)
    const open = this.#open.filter(({ person }) => person.id === id).map((one) => one.drivenMs)
    const over = stints.reduce((sum, one) => sum + (one.isPast ? one.drivenMs : 0), 0)
    const least = over + (open.length > 0 ? Math.min(...open) : 0)
    const column = this.model.part({ lower: least / MINUTE_MS, upper: Infinity })
    this.#totals.set(id, column)
    if (least > 0) this.past.set(column, least / MINUTE_MS)
    const driven = stints.map((one): Term => [one.column, one.drivenMs / MINUTE_MS])
    this.model.row([...driven, ...this.#stood(id), [column, -1]], { atLeast: 0, atMost: 0 })
    return column
  }

  /** What every total of somebody's driving is a multiple of; 0 where it is anything. */
  stepMs({ id }: Person): number {
    if (!this.grid.problem.counting.stops && this.waits.size > 0) return 0
    return this.stintsOf(id).reduce(
      (step, { drivenMs }) => greatestCommonDivisor(step, drivenMs),
      0,
    )
  }

  /** A row of a rule: what the past has broken already is held to that, and no further. */
  row(terms: readonly Term[], { atLeast, atMost, tag }: ToAdd): void {
    const past = terms.filter(([column]) => this.past.has(column))
    const over = past.reduce(
      (sum, [column, factor]) => sum + factor * (this.past.get(column) ?? 0),
      0,
    )
    const so = over + this.#unavoidable(terms)
    const isOver = past.length === terms.length && past.length > 0
    const isBegun = past.length > 0 || so > 0
    this.model.row(terms, {
      ...(atLeast === undefined ? {} : { atLeast: isOver ? Math.min(atLeast, so) : atLeast }),
      ...(atMost === undefined ? {} : { atMost: isBegun ? Math.max(atMost, so) : atMost }),
      ...(tag === undefined ? {} : { tag }),
    })
  }

  /** What a row comes to at least by the stint that is going on. */
  #unavoidable(terms: readonly Term[]): number {
    const open = terms.filter(([column]) => this.#open.some((one) => one.column === column))
    if (open.length === 0 || open.length < this.#open.length) return 0
    return Math.max(0, Math.min(...open.map(([, factor]) => factor)))
  }

  /** Minutes stood at stops within stints, where stops do not count as driving. */
  #stood(person: string): readonly Term[] {
    const { counting, stop } = this.grid.problem
    if (counting.stops) return []
    return this.grid.slots.flatMap(({ index }): Term[] => {
      const wait = this.waits.get(key(person, index))
      return wait === undefined ? [] : [[wait, -stop.standsMs / MINUTE_MS]]
    })
  }
}

function greatestCommonDivisor(one: number, other: number): number {
  return other === 0 ? one : greatestCommonDivisor(other, one % other)
}

export function key(person: string, slot: number): string {
  return `${slot} ${person}`
}

function heldKey({ duty, post }: Where, person: string, slot: number): string {
  return `${slot} ${person} ${duty} ${post ?? ''}`
}

function push<K, T>(map: Map<K, T[]>, at: K, one: T): void {
  const before = map.get(at)
  if (before) before.push(one)
  else map.set(at, [one])
}
