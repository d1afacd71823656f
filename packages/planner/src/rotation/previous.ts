/** The plan so far: which spans stay as they were. */
import type { Grid } from '../grid/grid.ts'
import type { Slot } from '../grid/slots.ts'
import type { Duty, Span } from '../problem/problem.ts'
import { times, type Term } from '../linear/model.ts'
import type { Rotation } from './rotation.ts'
import type { StintShape } from './stints.ts'

/** What a stint costs for not having been there before; what lies in the past counts for neither. */
export function changeCost(grid: Grid, stint: StintShape): number {
  const { previous } = grid.problem
  if (!previous || stint.isPast) return 0
  return previous.changeLaps * changedParts(grid, stint)
}

/** A stint over a lane change is a span in each segment. */
function changedParts(grid: Grid, { person, from, to }: StintShape): number {
  const slots = grid.slots.slice(from, to).filter(({ isPast }) => !isPast)
  const segments = [...new Set(slots.map(({ segment }) => segment.id))]
  return segments.filter((id) => {
    const here = slots.filter(({ segment }) => segment.id === id)
    return !wasThere(grid, { person: person.id, duty: 'controller', slots: here })
  }).length
}

interface Stretch {
  readonly person: string
  readonly duty: Duty
  readonly post?: string | undefined
  readonly slots: readonly Slot[]
}

function wasThere({ problem }: Grid, { person, duty, slots }: Stretch): boolean {
  const [first, last] = [slots[0], slots.at(-1)]
  if (!problem.previous || !first || !last) return false
  const { spans, sameWithinMs } = problem.previous
  const nowMs = first.segment.past?.untilMs ?? 0
  return spans.some((span) => {
    if (span.person !== person || span.duty !== duty || span.segment !== first.segment.id)
      return false
    const begins = Math.abs(Math.max(span.fromMs, nowMs) - first.fromMs) <= sameWithinMs
    return begins && Math.abs(span.toMs - last.toMs) <= sameWithinMs
  })
}

/** Of other duties every stretch in which somebody is where they were not has the price of one. */
export function addChangedDuties(rotation: Rotation): void {
  const { grid, model, places } = rotation
  const { previous } = grid.problem
  if (!previous) return
  for (const place of places) {
    for (const { id } of grid.problem.people) {
      for (const slot of grid.slots) {
        const held = isNew(previous.spans, { ...place, person: id, slots: [slot] })
          ? rotation.heldAt(place, id, slot.index)
          : []
        if (held.length === 0 || slot.isPast) continue
        const last = grid.slots[slot.index - 1]
        const goesOn =
          slot.fromMs > 0 &&
          last &&
          !last.isPast &&
          isNew(previous.spans, { ...place, person: id, slots: [last] })
        const before: readonly Term[] = goesOn ? rotation.heldAt(place, id, last.index) : []
        const column = model.part({ cost: -previous.changeLaps })
        model.row([[column, 1], ...times(held, -1), ...before], { atLeast: 0 })
      }
    }
  }
}

/** Nobody was to be there for more than half of the slot. */
function isNew(spans: readonly Span[], { person, duty, post, slots: [slot] }: Stretch): boolean {
  if (!slot) return true
  return !spans.some((span) => {
    if (span.person !== person || span.duty !== duty || span.post !== post) return false
    if (span.segment !== slot.segment.id) return false
    const shared = Math.min(span.toMs, slot.toMs) - Math.max(span.fromMs, slot.fromMs)
    return 2 * shared > slot.toMs - slot.fromMs
  })
}
