/** A meeting worked out, and the answer judged by what knows nothing of the planner's model. */
import {
  explain,
  plan,
  without,
  type Answer,
  type Planned,
  type Problem,
  type SolveOptions,
} from '@pitlamp/planner'
import { groundOf, type Ground } from '../../server/src/work/mapping/ground.ts'
import { lineOf } from '../../server/src/work/mapping/mapping.ts'
import { planFrom } from '../../server/src/work/mapping/plan-from.ts'
import { problemOf } from '../../server/src/work/mapping/problem-of.ts'
import { brokenBy } from '../../server/src/work/mapping/verdict.ts'
import { meantOf, PLAIN, type Given } from '../../server/src/work/testing/meant.ts'
import type { Meeting } from './meeting.ts'
import { bestTried, canBeTried } from './tried.ts'
import { worthOf } from './worth.ts'

export interface Judgement {
  readonly said: 'worked' | 'impossible' | 'stopped' | 'faulty' | 'thrown'
  /** What is wrong with the answer; empty where it stands. */
  readonly wrong: readonly string[]
  /** Every rotation was tried, and none is better. */
  readonly isTried: boolean
  /** Of the processor, until there was an answer: a plan, or what collides. */
  readonly seconds: number
}

export interface Bench {
  readonly solver: SolveOptions['solver']
  /** Of each solve. */
  readonly limitSeconds: number
  /** Work out again what is said of rules that collide, which takes longer than finding out. */
  readonly tryWhy: boolean
  /** Who is judged. */
  readonly planner?: Planner
}

export interface Planner {
  readonly plan: typeof plan
  readonly explain: typeof explain
}

/** The solver proves to a hundredth, and adds up in floating point. */
const SAME_LAPS = 0.05

export function judgementOf({ given, asked }: Meeting, bench: Bench): Judgement {
  const ground = groundOf(meantOf(given))
  if (!ground) throw new Error('A meeting without rules or crew.')
  const job: Job = { given, ground, problem: problemOf(ground, { ...PLAIN, ...asked }), bench }
  const before = process.cpuUsage()
  const planner = bench.planner ?? { plan, explain }
  const answer = planner.plan(job.problem, bench)
  const why = answer.kind === 'impossible' ? planner.explain(job.problem, bench) : undefined
  const { user, system } = process.cpuUsage(before)
  const isTried = answer.kind !== 'faulty' && canBeTried(job.problem)
  const wrong = [
    ...(answer.kind === 'planned' ? wrongPlan(job, answer) : []),
    ...(why ? wrongWhy(job, why) : []),
    ...(isTried ? wrongAgainst(bestTried(job.problem), answer) : []),
  ]
  const stopped = answer.kind === 'stopped' || why?.kind === 'stopped'
  const said = answer.kind === 'planned' ? 'worked' : stopped ? 'stopped' : answer.kind
  return { said, wrong, isTried, seconds: (user + system) / 1_000_000 }
}

interface Job {
  readonly given: Given
  readonly ground: Ground
  readonly problem: Problem
  readonly bench: Bench
}

/** Of lines that were given up nothing is asked any more. */
function wrongPlan(
  { ground, problem }: Job,
  answer: Planned,
  givenUp: readonly string[] = [],
): readonly string[] {
  const made = planFrom(ground, answer)
  const broken = brokenBy(ground, made)
    .filter(({ rule }) => !(rule && givenUp.includes(rule)))
    .map(({ sentence }) => `It breaks: ${sentence}`)
  const worth = worthOf(problem, made)
  const offLaps = answer.worthLaps - worth
  // Stopped by a limit, the solver may not have counted all that its plan is worth.
  const isOff = answer.proof === 'within' ? offLaps > SAME_LAPS : Math.abs(offLaps) > SAME_LAPS
  const off = `It says ${String(answer.worthLaps)} laps, and its plan is worth ${String(worth)}.`
  return [...broken, ...(isOff ? [off] : [])]
}

function wrongWhy(job: Job, why: ReturnType<typeof explain>): readonly string[] {
  if (why.kind === 'possible') return ['No plan, and nothing collides.']
  if (why.kind !== 'collision' || !job.bench.tryWhy) return []
  const { problem, bench } = job
  const all = [...problem.rules, ...problem.pins].map(({ id }) => id)
  const givenUp = why.giveUp.length > 0 ? why.giveUp : all
  const left = { ...job, ...freed(job, givenUp), problem: without(problem, givenUp) }
  const answer = plan(left.problem, bench)
  const lines = givenUp.map(lineOf)
  const alone = plan(
    without(
      problem,
      all.filter((id) => !why.collide.includes(id)),
    ),
    bench,
  )
  return [
    ...(answer.kind === 'planned' ? wrongPlan(left, answer, lines) : []),
    ...wrongAfter(why.giveUp, answer),
    ...(alone.kind === 'planned'
      ? [`Said to collide, and do not: ${why.collide.join(', ')}.`]
      : []),
  ]
}

/** A line that is not kept any more is not in the plan either. */
function freed({ given }: Job, givenUp: readonly string[]): Partial<Job> {
  const spans = (given.spans ?? []).filter(({ id }) => !givenUp.includes(`pin/${id}`))
  const ground = groundOf(meantOf({ ...given, spans }))
  return ground ? { ground } : {}
}

function wrongAfter(giveUp: readonly string[], answer: Answer): readonly string[] {
  const isEnough = giveUp.length > 0
  if (isEnough && answer.kind === 'impossible')
    return [`Without ${giveUp.join(', ')} there is no plan either.`]
  if (!isEnough && answer.kind === 'planned')
    return ['Said to be impossible without any rule, and is not.']
  return []
}

function wrongAgainst(best: number | undefined, answer: Answer): readonly string[] {
  if (answer.kind === 'stopped') return []
  const worth = answer.kind === 'planned' ? answer.worthLaps : undefined
  const isSame =
    best === undefined || worth === undefined ? best === worth : Math.abs(best - worth) <= SAME_LAPS
  return isSame ? [] : [`Tried out the best is worth ${String(best)}, worked out ${String(worth)}.`]
}
