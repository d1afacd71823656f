/** The solver's values → spans and stops of what is still to come. */
import type { Slot } from '../grid/slots.ts'
import type { Span } from '../problem/problem.ts'
import { earlyMs } from '../rotation/early.ts'
import type { Place, Rotation } from '../rotation/rotation.ts'

export interface Stop {
  readonly segment: string
  readonly atMs: number
  readonly mandatory: boolean
  readonly task?: string
  /** The given stop it is; left out where it was chosen. */
  readonly given?: string
}

export interface Sheet {
  /** In order of segments, beginning, duty and person; none of them reaches over a segment. */
  readonly spans: readonly Span[]
  readonly stops: readonly Stop[]
}

type Values = ArrayLike<number>

export function read(rotation: Rotation, values: Values): Sheet {
  const order = new Map(rotation.grid.problem.segments.map(({ id }, place) => [id, place]))
  const spans = [...driven(rotation, values), ...held(rotation, values)]
  spans.sort(
    (a, b) =>
      (order.get(a.segment) ?? 0) - (order.get(b.segment) ?? 0) ||
      a.fromMs - b.fromMs ||
      compare(a.duty, b.duty) ||
      compare(a.person, b.person),
  )
  return { spans, stops: stopped(rotation, values) }
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

export function isOn(values: Values, column: number | undefined): boolean {
  return column !== undefined && (values[column] ?? 0) > 0.5
}

/** One span a stint and segment, from where the past ends. */
function driven({ grid, stints }: Rotation, values: Values): readonly Span[] {
  return stints
    .filter(({ column, isPast }) => !isPast && isOn(values, column))
    .flatMap(({ person, from, to }) =>
      inARow(grid.slots.slice(from, to)).map((slots) => ({
        person: person.id,
        duty: 'controller',
        ...extent(slots),
      })),
    )
}

function held(rotation: Rotation, values: Values): readonly Span[] {
  const { grid, places } = rotation
  return places.flatMap((place) =>
    grid.problem.people.flatMap(({ id }) => {
      const slots = grid.slots.filter(({ index }) =>
        isOn(values, rotation.heldAt(place, id, index)[0]?.[0]),
      )
      return inARow(slots).map((row) => heldSpan(rotation, place, { person: id, row }))
    }),
  )
}

function heldSpan(
  { grid }: Rotation,
  { duty, post }: Place,
  { person, row }: { person: string; row: readonly Slot[] },
): Span {
  const { segment, fromMs, toMs } = extent(row)
  const wasBefore = grid.slots[(row[0]?.index ?? 0) - 1]?.isPast === true
  const early = duty === 'post' && fromMs > 0 && !wasBefore ? earlyMs(grid.problem) : 0
  const where = post === undefined ? {} : { post }
  return { person, duty, segment, fromMs: fromMs - early, toMs, ...where }
}

function extent(slots: readonly Slot[]) {
  const [first, last] = [slots[0], slots.at(-1)]
  return { segment: first?.segment.id ?? '', fromMs: first?.fromMs ?? 0, toMs: last?.toMs ?? 0 }
}

/** Slots still to come, in rows without a gap that lie in one segment. */
function inARow(slots: readonly Slot[]): readonly (readonly Slot[])[] {
  const rows: Slot[][] = []
  for (const slot of slots.filter(({ isPast }) => !isPast)) {
    const last = rows.at(-1)?.at(-1)
    if (last?.segment === slot.segment && last.index + 1 === slot.index) rows.at(-1)?.push(slot)
    else rows.push([slot])
  }
  return rows
}

function stopped(rotation: Rotation, values: Values): readonly Stop[] {
  return rotation.grid.slots.flatMap((slot): Stop[] => {
    if (slot.isPast || !isOn(values, rotation.stops.get(slot.index))) return []
    const task = slot.stop?.task ?? taskAt(rotation, values, slot)
    return [
      {
        segment: slot.segment.id,
        atMs: slot.fromMs,
        mandatory: slot.stop?.mandatory ?? true,
        ...(task === undefined ? {} : { task }),
        ...(slot.stop ? { given: slot.stop.id } : {}),
      },
    ]
  })
}

function taskAt({ tasks }: Rotation, values: Values, { index }: Slot): string | undefined {
  return [...(tasks.get(index) ?? [])].find(([, column]) => isOn(values, column))?.[0]
}
