/** One job: from documents and log to lines for the screen. Runs in the solver thread; knows no thread itself. */
import {
  compare,
  costOf,
  expected,
  explain,
  plan as planned,
  replan,
  without,
  type Answer,
  type Planned,
  type Problem,
  type SolveOptions,
} from '@pitlamp/planner'
import type { WorkLine, WorkOut, Worked } from '@pitlamp/contract'
import type { Plan } from '@pitlamp/race'
import { groundOf, type Ground, type Meant } from './mapping/ground.ts'
import { SAME_WITHIN_MS } from './mapping/guesses.ts'
import { lineOf } from './mapping/mapping.ts'
import { changedLines, planFrom } from './mapping/plan-from.ts'
import { problemOf } from './mapping/problem-of.ts'
import { dutyOf } from './mapping/segments.ts'
import { brokenBy, brokenSoFar } from './mapping/verdict.ts'
import { faultWords, paceNotes, peopleWords, sentenceFor, sentencesOf } from './words.ts'

export interface Tools {
  readonly solver: SolveOptions['solver']
  readonly shouldStop: () => boolean
  readonly say: (line: WorkLine) => void
}

/** Of each search, as the solver counts; longer than any team waits for, and a cancel is heard at any time. */
const PLAN_SECONDS = 60
const WHY_SECONDS = 30
const COST_SECONDS = 10

export function workOut(meant: Meant, asked: WorkOut, tools: Tools): void {
  const ground = groundOf(meant)
  if (!ground) {
    const sentences = ['There are no rules, or nobody is in the crew yet: write them down first.']
    tools.say({ kind: 'notDone', why: 'faulty', sentences })
    return
  }
  const job: Job = { ground, problem: problemOf(ground, asked), tools }
  if (asked.want === 'costs') costs(job)
  else if (asked.want === 'again') again(job)
  else offer(job, 'plan', planned(job.problem, optionsOf(job, 'plan', PLAN_SECONDS)))
}

interface Job {
  readonly ground: Ground
  readonly problem: Problem
  readonly tools: Tools
  /** What an answer is held against instead of the plan as it stands. */
  readonly than?: Sheet
}

type On = Extract<WorkLine, { kind: 'working' }>['on']

function optionsOf({ tools }: Job, on: On, limitSeconds: number): SolveOptions {
  const { solver, shouldStop, say } = tools
  return {
    ...{ solver, shouldStop, limitSeconds },
    onProgress: ({ incumbentLaps, boundLaps }) => {
      say({
        ...{ kind: 'working', on },
        ...(incumbentLaps === undefined ? {} : { incumbentLaps }),
        ...(Number.isFinite(boundLaps) ? { boundLaps } : {}),
      })
    },
  }
}

/** Says an answer, whatever it is. */
function offer(job: Job, as: Worked['as'], answer: Answer): void {
  const { ground, tools } = job
  switch (answer.kind) {
    case 'planned':
      judged(job, as, answer)
      return
    case 'faulty':
      tools.say({
        kind: 'notDone',
        why: 'faulty',
        sentences: [...faultWords(answer.faults, ground)],
      })
      return
    case 'stopped':
      tools.say({
        kind: 'notDone',
        why: 'stopped',
        sentences: ['Stopped before there was any plan.'],
      })
      return
    case 'impossible':
      impossible(job, as)
  }
}

/** What breaks a rule is never offered. */
function judged(job: Job, as: Worked['as'], answer: Planned): void {
  const { ground, tools } = job
  const plan = planFrom(ground, answer)
  const broken = brokenBy(ground, plan)
  if (broken.length === 0) {
    tools.say(workedOf(job, { as, answer, plan }))
    return
  }
  const sentences = broken.map(({ clause, sentence }) =>
    clause ? `${clause}: ${sentence}` : sentence,
  )
  tools.say({ kind: 'notDone', why: 'ourFault', sentences })
}

interface Worth {
  readonly as: Worked['as']
  readonly answer: Planned
  readonly plan: Plan
}

function workedOf(
  { ground, problem, than }: Omit<Job, 'tools'>,
  { as, answer, plan }: Worth,
): Worked {
  const { laps, fromLaps, toLaps } = answer.expected
  const isPaceKnown = ground.crew.people.some(({ paceMs }) => paceMs)
  const other = than ?? drawn(ground)
  const against = isPaceKnown && other ? compared(problem, answer, other) : undefined
  return {
    ...{ kind: 'worked', as, plan, proof: answer.proof },
    ...(isPaceKnown ? { laps: { expected: laps, from: fromLaps, to: toLaps } } : {}),
    ...(Number.isFinite(answer.gapLaps) ? { gapLaps: answer.gapLaps } : {}),
    changed: changedLines(ground.plan, plan, SAME_WITHIN_MS),
    ...(against ? { against } : {}),
    notes: [...paceNotes(ground)],
  }
}

/** The plan as it stands, if it breaks no rule. */
function drawn(ground: Ground): Sheet | undefined {
  const spans = ground.timeline.spans.filter(({ done }) => !done).flatMap(dutyOf)
  if (spans.length === 0 || brokenBy(ground, ground.plan).length > 0) return undefined
  const stops = ground.timeline.stops.filter(({ done }) => !done)
  return {
    spans,
    stops: stops.map(({ segment, atMs, mandatory }) => ({ segment, atMs, mandatory })),
  }
}

type Sheet = Parameters<typeof expected>[1]

/** The edges of both are edges of the slots that both are priced on. */
function compared(problem: Problem, answer: Sheet, other: Sheet): Worked['against'] {
  const edges = (segment: string) =>
    [...other.spans, ...answer.spans]
      .filter((span) => span.segment === segment)
      .flatMap(({ fromMs, toMs }) => [fromMs, toMs])
  const fine: Problem = {
    ...problem,
    segments: problem.segments.map(({ gridMs: _, mayStopAtMs: __, cutsMs = [], ...segment }) => ({
      ...segment,
      cutsMs: [...cutsMs, ...edges(segment.id)],
    })),
  }
  const priced = (sheet: Sheet) => ({
    expected: expected(withStops(fine, sheet.stops), sheet),
    spans: sheet.spans,
  })
  const { fairer, ...rest } = compare(fine, priced(answer), priced(other))
  if (!fairer) return rest
  return { ...rest, fairer: fairer === 'first' ? 'this' : 'theOther' }
}

/** Each sheet is priced with its own stops as given ones. */
function withStops(problem: Problem, stops: Planned['stops']): Problem {
  return {
    ...problem,
    segments: problem.segments.map((segment) => {
      const { past, id } = segment
      const made = segment.stops.filter(({ atMs }) => atMs <= (past?.untilMs ?? 0))
      const ahead = stops
        .filter((stop) => stop.segment === id)
        .map(({ atMs, mandatory }) => ({ id: `at ${atMs}`, atMs, mandatory }))
      return { ...segment, stops: [...made, ...ahead] }
    }),
  }
}

/** What the race has broken for good is given up, and what is left is kept; otherwise it is said what collides. */
function impossible(job: Job, as: Worked['as']): void {
  const { ground, problem } = job
  const broken = new Set(
    brokenSoFar(ground).flatMap(({ rule }) => (rule === undefined ? [] : [rule])),
  )
  const lost = problem.rules.map(({ id }) => id).filter((id) => broken.has(lineOf(id)))
  if (lost.length > 0) {
    const left = { ...job, problem: without(problem, lost) }
    const answer = planned(left.problem, optionsOf(left, 'plan', PLAN_SECONDS))
    if (answer.kind === 'planned') {
      judged(left, as, answer)
      return
    }
  }
  explained(job)
}

function explained(job: Job): void {
  const { ground, problem, tools } = job
  const why = explain(problem, optionsOf(job, 'why', WHY_SECONDS))
  if (why.kind === 'collision') {
    const giveUp = [...sentencesOf(why.giveUp, ground)]
    const collide = [...sentencesOf(why.collide, ground)]
    tools.say({ kind: 'impossible', giveUp, collide, people: [...peopleWords(ground)] })
    return
  }
  const sentences = [
    'There is no plan that keeps all rules. Which of them collide was not found out in time.',
  ]
  tools.say({ kind: 'notDone', why: 'stopped', sentences })
}

/**
 * Twice: as few changes as can be, and the most laps, whoever drives them. Where one is impossible the other is, and is
 * explained once.
 */
function again(job: Job): void {
  const balance = { ...job.problem.balance, lapsPerHour: 0 }
  const race = { ...job, problem: { ...job.problem, balance } }
  const spans = job.ground.planned.flatMap(dutyOf)
  const before = { spans, sameWithinMs: SAME_WITHIN_MS }
  const { fewestChanges, mostLaps } = replan(
    race.problem,
    before,
    optionsOf(job, 'plan', PLAN_SECONDS),
  )
  offer(race, 'fewestChanges', fewestChanges)
  if (fewestChanges.kind === 'planned')
    offer({ ...race, than: fewestChanges }, 'mostLaps', mostLaps)
}

/** Each rule, wish and line that is kept taken away by itself, and worked out again. */
function costs(job: Job): void {
  const { ground, problem, tools } = job
  const kept = planned(problem, optionsOf(job, 'plan', PLAN_SECONDS))
  if (kept.kind !== 'planned') {
    offer(job, 'plan', kept)
    return
  }
  const all = [...problem.rules, ...problem.wishes, ...problem.pins].map(({ id }) => id)
  const lineOfAny = (id: string) => (/^(wish|pin|need)\//.test(id) ? id : lineOf(id))
  for (const id of new Set(all.map(lineOfAny))) {
    if (tools.shouldStop()) return
    const ids = all.filter((one) => lineOfAny(one) === id)
    const { laps } = costOf(problem, { ids, kept }, optionsOf(job, 'costs', COST_SECONDS))
    const sentence = sentenceFor(id, ground)
    const isKnown = laps !== undefined && laps.every((one) => Number.isFinite(one))
    tools.say({
      ...{ kind: 'cost', id, sentence },
      ...(isKnown ? { laps: { least: laps[0], most: laps[1] } } : {}),
    })
  }
}
