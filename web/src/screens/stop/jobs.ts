/** The work of a stop: open faults, those mended since the car came in, and what was put on the list by hand. */
import {
  compulsoryRepairs,
  faultClocks,
  planInForce,
  type CompulsoryRepair,
  type StopState,
} from '@pitlamp/race'
import { cautionsFor, isHotWork, type Caution } from '../../parts/cautions.ts'
import { figure } from '../../parts/time.ts'
import type { Seen } from '../wall/people.ts'
import { mustWords } from './must-words.ts'

export interface Job {
  readonly id: string
  readonly what: string
  /** The fault it mends, where it mends one. */
  readonly fault?: string
  readonly done: boolean
  readonly repairing: boolean
  readonly repair?: string
  /** What a rule says of it, where one must be kept. */
  readonly must?: string
  /** A rule asks that nothing else is done in the stop that mends it. */
  readonly alone: boolean
  readonly cautions: readonly Caution[]
  /** Why it is not offered now. */
  readonly notNow?: string
  /** Put off: not in this stop. */
  readonly left: boolean
}

export interface JobsAsked {
  readonly stop: StopState
  /** Ids in the order somebody put them; what is not among them comes after, as it came. */
  readonly order: readonly string[]
  readonly left: readonly string[]
  /** A countdown is running, and the captain has not allowed hot, glued and solvent work inside one. */
  readonly noHotWork: boolean
}

/** Must-be-mended first, then faults, then the list; what was put off comes last. Done jobs keep their place. */
export function jobsOf(seen: Seen, asked: JobsAsked): readonly Job[] {
  const compulsory = compulsoryRepairs(seen.state, seen.now)
  const place = (fault: string) => compulsory.findIndex((one) => one.fault.entry === fault)
  const faults = faultJobs(seen, { ...asked, compulsory }).sort(
    (a, b) => (place(a.id) + 1 || 99) - (place(b.id) + 1 || 99),
  )
  const jobs = [...faults, ...listedJobs(seen, asked)]
  const rank = ({ id, left }: Job) =>
    (left ? 1_000 : 0) + (asked.order.includes(id) ? asked.order.indexOf(id) : 500)
  return jobs.sort((a, b) => rank(a) - rank(b))
}

/** The first that is still to be done and may be. */
export function currentJob(jobs: readonly Job[]): Job | undefined {
  return jobs.find(({ done, left, notNow }) => !done && !left && notNow === undefined)
}

export function cameInAt({ moments }: StopState): number {
  return moments.pitEntry?.at ?? moments.stopped?.at ?? 0
}

interface FaultsAsked extends JobsAsked {
  readonly compulsory: readonly CompulsoryRepair[]
}

function faultJobs({ state, now }: Seen, { compulsory, ...asked }: FaultsAsked): Job[] {
  const since = cameInAt(asked.stop)
  return faultClocks(state, now)
    .filter(
      ({ fault: { ended } }) =>
        ended === undefined || (ended.how === 'mended' && ended.at >= since),
    )
    .map(({ fault, repairMs, repairing }) => {
      const rule = compulsory.find((one) => one.fault.entry === fault.entry)
      return {
        ...aboutWork(fault.fault, asked),
        id: fault.entry,
        fault: fault.entry,
        done: fault.ended !== undefined,
        repairing,
        repair: fault.repairs.length === 0 ? undefined : figure(repairMs),
        must: rule && mustWords(rule),
        alone: rule?.elseAtStop === 'nothing',
        left: asked.left.includes(fault.entry),
      }
    })
}

/** What was ticked or put on the list since the car came in, and the task planned for this stop. */
function listedJobs({ state, now }: Seen, asked: JobsAsked): readonly Job[] {
  const done = new Map<string, boolean>()
  const task = plannedTask({ state, now }, asked.stop)
  if (task !== undefined) done.set(task, false)
  const since = cameInAt(asked.stop)
  for (const { at, body } of state.car.work) if (at >= since) done.set(body.work, body.done)
  return [...done].map(([what, isDone]) => ({
    ...aboutWork(what, asked),
    id: workId(what),
    done: isDone,
    repairing: false,
    alone: false,
    left: asked.left.includes(workId(what)),
  }))
}

export function workId(work: string): string {
  return `work ${work}`
}

/** A change of driver has its own line. */
function plannedTask({ state, now }: Omit<Seen, 'crew'>, stop: StopState): string | undefined {
  const planned = planInForce(state, now)?.stops.find(({ id }) => id === stop.planned)
  return planned?.task === undefined || /\bdrivers?\b/i.test(planned.task)
    ? undefined
    : planned.task
}

const NOT_IN_A_HURRY =
  'Not while the minimum counts: the captain has not allowed hot, glued or solvent work inside a countdown.'

function aboutWork(
  what: string,
  { noHotWork }: JobsAsked,
): Pick<Job, 'what' | 'cautions' | 'notNow'> {
  const notNow = noHotWork && isHotWork(what) ? NOT_IN_A_HURRY : undefined
  return { what, cautions: cautionsFor(what), notNow }
}
