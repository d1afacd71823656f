import type { PlanSpan } from '../documents/plan.ts'
import type { Duty, Move } from '../entry/scalars.ts'
import type { DutySpan, State } from '../fold/state.ts'
import { clockAt } from '../time/clock-map.ts'
import { beganMs, isSettled, plannedDuties, plannedDutyOf, positionAt } from '../time/plan-spans.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { segmentsOf, type SegmentOutlook } from '../time/programme.ts'
import { dutiesNow, isThereAlready } from './duties.ts'

export interface NextHandover {
  /** Meeting time; past where the plan has a driver who has not taken over yet. */
  readonly at: number
  readonly clockMs: number
  /** In an order that can be done: relief first, nobody leaves a post before it has come. */
  readonly moves: readonly Move[]
  /** The plan's spans that begin with it, and those still open from before. */
  readonly spans: readonly PlanSpan[]
}

/**
 * The next change the plan asks for, from the running segment on: an overdue driver first, otherwise the
 * next position at which a duty begins. Moves that should have been made before it are part of it.
 */
export function nextHandover(state: State, now: number): NextHandover | undefined {
  const plan = planInForce(state, now)
  for (const outlook of segmentsOf(state, now)) {
    if (outlook.state !== 'ahead' && outlook.state !== 'running') continue
    const planned = plannedDuties(plan, outlook.item.id)
    const clockMs = outlook.run ? clockAt(outlook.run, now).clockMs : -1
    const open = planned.filter((span) => {
      if (span.toMs <= clockMs) return false
      if (!outlook.run && span.fromMs === 0) return !isThereAlready(state, span)
      return !(outlook.run && isSettled(state, outlook, { span, planned }))
    })
    const from = nextPosition(open, clockMs)
    if (from === undefined) continue
    const spans = open.filter((span) => span.fromMs <= from && span.toMs > from)
    const moves = movesFor(state, { outlook, planned, spans, from })
    return { at: positionAt(outlook, from, now), clockMs: from, moves, spans }
  }
  return undefined
}

function nextPosition(open: readonly PlanSpan[], clockMs: number): number | undefined {
  const late = open.find((span) => span.duty === 'controller' && span.fromMs <= clockMs)
  return late?.fromMs ?? open.find((span) => span.fromMs > clockMs)?.fromMs
}

interface Change {
  readonly outlook: SegmentOutlook
  readonly planned: readonly PlanSpan[]
  readonly spans: readonly PlanSpan[]
  readonly from: number
}

function movesFor(state: State, change: Change): readonly Move[] {
  const moves = inDoableOrder(state, change.spans.map(moveOf))
  const moving = new Set(moves.map((move) => move.person))
  for (const duty of dutiesNow(state)) {
    if (moving.has(duty.person) || duty.duty === 'offDuty') continue
    if (isRelieved(duty, moves) || isThrough(change, duty)) {
      moves.push({ person: duty.person, duty: 'offDuty' })
    }
  }
  return moves
}

function moveOf(span: PlanSpan): Move {
  const move: Move = { person: span.person, duty: span.duty }
  if (span.post !== undefined) move.post = span.post
  if (span.lane !== undefined) move.lane = span.lane
  return move
}

function isRelieved(duty: DutySpan, moves: readonly Move[]): boolean {
  if (duty.duty !== 'controller' && duty.duty !== 'post') return false
  return moves.some((move) => move.duty === duty.duty && move.post === duty.post)
}

function isThrough({ outlook, planned, from }: Change, duty: DutySpan): boolean {
  if (!outlook.run) return false
  const { own } = plannedDutyOf(planned, duty, beganMs(outlook, duty))
  return own !== undefined && own.toMs <= from
}

const ORDER: readonly Duty[] = ['post', 'wall', 'controller', 'bench', 'offDuty']

/**
 * Posts first, since whoever drives next may have to be relieved there; among posts whoever leaves one goes
 * after their own relief. Where reliefs form a ring nobody can begin: they keep the plan's order.
 */
function inDoableOrder(state: State, moves: readonly Move[]): Move[] {
  const posts = moves.filter((move) => move.duty === 'post')
  const ordered: Move[] = []
  while (posts.length > 0) {
    const free = posts.findIndex((move) => !waitsForRelief(state, move, posts))
    ordered.push(...posts.splice(Math.max(free, 0), 1))
  }
  for (const duty of ORDER.slice(1)) ordered.push(...moves.filter((move) => move.duty === duty))
  return ordered
}

function waitsForRelief(state: State, move: Move, posts: readonly Move[]): boolean {
  const held = dutiesNow(state).find((duty) => duty.person === move.person)
  if (held?.duty !== 'post') return false
  return posts.some((other) => other !== move && other.post === held.post)
}
