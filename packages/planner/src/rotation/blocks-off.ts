/** One unbroken block without certain duties, for a rule that demands it and for a wish. */
import type { Stretch } from '../grid/grid.ts'
import type { Term } from '../linear/model.ts'
import type { Duty } from '../problem/problem.ts'
import { earlyMs } from './early.ts'
import type { Rotation } from './rotation.ts'

interface Off {
  readonly tag: string
  readonly person: string
  readonly lengthMs: number
  /** It lies in one of these, in meeting time. */
  readonly windows: readonly Stretch[]
  /** Those that break it. */
  readonly duties: readonly Duty[]
}

interface Block extends Stretch {
  readonly term: Term
}

/**
 * A part for every block there may be, and rows by which no duty is held in it. Where the parts sum to 1, every block
 * that has one is kept, so that none of them need be whole. Empty where none fits.
 */
export function blocksOff(rotation: Rotation, off: Off): readonly Term[] {
  const blocks = beginnings(rotation, off).map((fromAt): Block => {
    return { fromAt, toAt: fromAt + off.lengthMs, term: [rotation.model.part({ upper: 1 }), 1] }
  })
  for (const slot of rotation.grid.slots) {
    keptFree(rotation, blocks, { off, slot })
    if (off.duties.includes('post')) keptFromRelief(rotation, blocks, { off, slot })
  }
  return blocks.map(({ term }) => term)
}

/** A block begins with its window or where a duty ends. */
function beginnings({ grid }: Rotation, { lengthMs, windows }: Off): readonly number[] {
  const ends = grid.slots.map(({ toAt }) => toAt)
  const all = windows.flatMap(({ fromAt, toAt }) =>
    [fromAt, ...ends.filter((at) => at > fromAt)].filter((at) => at + lengthMs <= toAt),
  )
  return [...new Set(all)].sort((a, b) => a - b)
}

type Slot = Rotation['grid']['slots'][number]
interface InSlot {
  readonly off: Off
  readonly slot: Slot
}

function keptFree(rotation: Rotation, blocks: readonly Block[], { off, slot }: InSlot): void {
  const here = over(blocks, slot)
  if (here.length === 0) return
  const held = off.duties.map((duty) => rotation.onDuty(off.person, duty, slot.index))
  // What does not go together is held one at a time, so that one row says all.
  const isApart = rotation.grid.problem.joined.length === 0
  for (const terms of isApart ? [held.flat()] : held) {
    if (terms.length > 0) rotation.row([...terms, ...here], { atMost: 1, tag: off.tag })
  }
}

/** A relief comes to the post before its slot begins. */
function keptFromRelief(rotation: Rotation, blocks: readonly Block[], { off, slot }: InSlot): void {
  const { grid, places } = rotation
  const byMs = earlyMs(grid.problem)
  if (byMs === 0 || slot.fromMs === 0 || slot.isPast || grid.slots[slot.index - 1]?.isPast) return
  const here = over(blocks, { fromAt: slot.fromAt - byMs, toAt: slot.fromAt })
  if (here.length === 0) return
  for (const place of places.filter(({ duty }) => duty === 'post')) {
    const begun = rotation.begunAt(place, off.person, slot.index)
    if (begun.length > 0) rotation.row([...begun, ...here], { atMost: 1, tag: off.tag })
  }
}

function over(blocks: readonly Block[], { fromAt, toAt }: Stretch): readonly Term[] {
  return blocks.filter((one) => one.fromAt < toAt && one.toAt > fromAt).map(({ term }) => term)
}
