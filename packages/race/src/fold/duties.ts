/**
 * Who has which duty. A person has one at a time; the controller has one holder, and so has each post (a post
 * nobody numbered counts as one). Whoever is relieved has none until somebody says otherwise.
 */
import type { EntryOf } from '../entry/read.ts'
import type { Move } from '../entry/scalars.ts'
import { lanesIn } from '../time/lanes.ts'
import { onLanes } from '../time/plan-on-lanes.ts'
import type { Draft, PeopleDraft, SpanDraft } from './draft.ts'
import { inForce } from './in-force.ts'

interface Handover {
  readonly entry: string
  readonly at: number
}

/** The moves in their order. False where every one of them states what was already so. */
export function applyMoves(draft: Draft, moves: readonly Move[], handover: Handover): boolean {
  let changed = false
  for (const move of moves) {
    const held = draft.people.holding.get(move.person)
    if (hasAlready(held, move)) continue
    if (held) held.toAt = handover.at
    take(draft.people, move, handover)
    changed = true
  }
  return changed
}

/** False where the person had no duty. */
export function leaveDuty(people: PeopleDraft, person: string, at: number): boolean {
  const span = people.holding.get(person)
  if (!span) return false
  span.toAt = at
  people.holding.delete(person)
  return true
}

/**
 * When a segment goes green, whoever the plan has on duty from its beginning is taken to be there, where
 * nobody said who is and the person is not known to be elsewhere. In a sit-out nobody goes on driving.
 */
export function assumeDuties(draft: Draft, entry: EntryOf<'green.1'>, at: number): void {
  const { people } = draft
  const lanes = lanesAt(draft, at)
  if (lanes.get(entry.body.segment) === 'sitOut') nobodyDrives(people, at)
  const plan = inForce(draft, 'plan', at)
  const spans = plan ? onLanes(plan, inForce(draft, 'rules', at), lanes).spans : []
  for (const span of spans) {
    if (span.segment !== entry.body.segment || span.fromMs > 0 || span.toMs === 0) continue
    if (people.holding.has(span.person) || isElsewhere(people, span.person)) continue
    if ([...people.holding.values()].some((holder) => isRelievedBy(holder, span))) continue
    begin(people, span, { entry: entry.id, at }).assumed = true
  }
}

function lanesAt(draft: Draft, at: number): ReturnType<typeof lanesIn> {
  const { starts, lanes } = draft.raceControl
  return lanesIn(inForce(draft, 'rules', at), { starts, laneOf: (one) => lanes.get(one) })
}

/** The car has no lane: whoever had the controller has no duty until somebody says otherwise. */
function nobodyDrives(people: PeopleDraft, at: number): void {
  for (const { person, duty } of people.holding.values()) {
    if (duty === 'controller') leaveDuty(people, person, at)
  }
}

/** The person's duty from before is closed by now, and is overwritten here. */
function take(people: PeopleDraft, move: Move, handover: Handover): void {
  for (const holder of people.holding.values()) {
    if (holder.person === move.person || !isRelievedBy(holder, move)) continue
    // Two who go to one unnumbered post in one handover stand there together.
    if (move.duty === 'post' && holder.entry === handover.entry) continue
    leaveDuty(people, holder.person, handover.at)
  }
  begin(people, move, handover)
}

function begin(people: PeopleDraft, move: Move, { entry, at }: Handover): SpanDraft {
  const span: SpanDraft = { entry, person: move.person, duty: move.duty, fromAt: at }
  if (move.post !== undefined) span.post = move.post
  if (move.lane !== undefined) span.lane = move.lane
  people.duties.push(span)
  people.holding.set(move.person, span)
  return span
}

function isRelievedBy(span: SpanDraft, move: Move): boolean {
  if (span.duty !== move.duty) return false
  return move.duty === 'controller' || (move.duty === 'post' && span.post === move.post)
}

function hasAlready(span: SpanDraft | undefined, move: Move): boolean {
  return span?.duty === move.duty && span.post === move.post && span.lane === move.lane
}

function isElsewhere(people: PeopleDraft, person: string): boolean {
  const state = people.availability.get(person)?.state
  return state === 'late' || state === 'away' || state === 'unwell'
}
