/**
 * What a plan is worth, from its lines: expected laps − unequal shares − duties taken up − wishes missed. Knows what was
 * asked for and nothing of how it was worked out.
 */
import type { Problem } from '@pitlamp/planner'
import { continues, drivenMs, stintsOf, type Sheet, type Stint } from './driven.ts'
import { isMissed } from './missed.ts'

const HOUR_MS = 3_600_000

export function worthOf(problem: Problem, sheet: Sheet): number {
  const stints = stintsOf(problem, sheet)
  const missed = problem.wishes.filter((wish) => isMissed(wish, problem, sheet))
  return (
    sum(stints.map((stint) => lapsOf(problem, stint))) -
    unequal(problem, stints) -
    takenUp(problem, sheet) * problem.dutyChangeLaps -
    sum(missed.map(({ laps }) => laps))
  )
}

/** Slower with each hour since the stint began, as it is in the middle of each piece. */
function lapsOf({ people, stop }: Problem, { person, pieces }: Stint): number {
  const pace = people.find(({ id }) => id === person)?.pace
  const beganAt = pieces[0]?.fromAt ?? 0
  if (!pace) return 0
  const each = pieces.map((piece, place) => {
    const { lane } = piece.segment
    const lapMs = pace.lapMs + (typeof lane === 'number' ? (pace.laneAddsMs?.[lane] ?? 0) : 0)
    const hours = ((piece.fromAt + piece.toAt) / 2 - beganAt) / HOUR_MS
    const lengthMs = piece.toAt - piece.fromAt
    const lostMs = piece.stop ? Math.min(lengthMs, stop.costsMs) : 0
    const tiredMs = lapMs + pace.slowerPerHourMs * hours
    // Whoever waits at a stop that was chosen is taken to lose laps at a fresh pace.
    const isWait = piece.stop === 'chosen' && place > 0
    return isWait ? lengthMs / tiredMs - lostMs / lapMs : (lengthMs - lostMs) / tiredMs
  })
  return sum(each) - pace.findingInLaps
}

function unequal({ people, segments, balance, ...of }: Problem, stints: readonly Stint[]): number {
  const drivers = people.filter(({ duties, pace }) => duties.includes('controller') && pace)
  const running = segments.filter(({ lane }) => lane !== 'sitOut')
  const fairMs = sum(running.map(({ lengthMs }) => lengthMs)) / drivers.length
  const overMs = drivers.map(({ id }) => {
    const own = stints.filter(({ person }) => person === id)
    const ms = sum(own.map((stint) => drivenMs({ people, segments, balance, ...of }, stint)))
    return Math.max(0, Math.abs(ms - fairMs) - balance.toleranceMs)
  })
  return (sum(overMs) / HOUR_MS) * balance.lapsPerHour
}

/** Lines of duties besides driving, but those that go on over a lane change. */
function takenUp(problem: Problem, { spans }: Sheet): number {
  const held = spans.filter(({ duty }) => duty !== 'controller' && duty !== 'offDuty')
  return held.filter((line) => {
    const place = problem.segments.findIndex(({ id }) => id === line.segment)
    return !held.some(
      (one) =>
        one.person === line.person &&
        one.duty === line.duty &&
        one.post === line.post &&
        continues(problem, place, [one, line]),
    )
  }).length
}

function sum(values: readonly number[]): number {
  return values.reduce((all, one) => all + one, 0)
}
