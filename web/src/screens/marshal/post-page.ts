/** What stands on a marshal's page. Times are whole minutes and "about": nothing on it ticks. */
import {
  type Duty,
  dutyOf,
  nextDutyOf,
  type NextDuty,
  planTimeline,
  type State,
  type TimelineSpan,
} from '@pitlamp/race'
import { laneNow, laneWords } from '../../parts/lane-words.ts'
import { dutyWords, sentenceCase } from '../../parts/moves.ts'
import { clockTime } from '../../parts/time.ts'

export interface PostPage {
  readonly onPost: boolean
  /** `Post 4`; what else the person does where they hold no post. */
  readonly where: string
  readonly until?: string
  readonly relief?: string
  /** The relief is due within two minutes, or past due: the page turns. */
  readonly near: boolean
  readonly next?: string
  /** Which lane our car runs in; absent where it has none. */
  readonly lane?: string
  /** Obligations that stand on the page already, by id. */
  readonly told: readonly string[]
}

export interface PostSeen {
  readonly state: State
  readonly now: number
  readonly person: string
  readonly timeZone: string
  readonly nameOf: (person: string) => string
}

const NEAR_MS = 120_000

export function postPage(seen: PostSeen): PostPage {
  const lane = laneNow(seen.state, seen.now)
  return { ...dutyPage(seen), ...(lane === undefined ? {} : { lane: laneWords(lane) }) }
}

function dutyPage(seen: PostSeen): PostPage {
  const { state, now, person } = seen
  const held = dutyOf(state, person)
  const own = nextDutyOf(state, person, now)
  const next = own && nextWords(own, seen)
  const told = own ? [`nextDuty:${own.span.id}`] : []
  if (held?.duty !== 'post') {
    return { onPost: false, where: elsewhere(held?.duty, held?.post), near: false, next, told }
  }
  const plan = planTimeline(state, now).spans
  const span = spanOf(plan, person, now)
  const where = held.post === undefined ? 'Marshal' : `Post ${held.post}`
  if (!span) return { onPost: true, where, near: false, next, told }
  const relief = reliefOf(plan, span)
  return {
    onPost: true,
    where,
    until: clockTime(span.toAt, seen.timeZone, { dayRelativeTo: now }),
    relief: relief && seen.nameOf(relief.person),
    near: span.toAt - now <= NEAR_MS,
    next,
    told: relief ? [...told, `relief:${relief.id}`] : told,
  }
}

/** The planned turn at a post that holds now, or the last one that should have ended. */
function spanOf(
  plan: readonly TimelineSpan[],
  person: string,
  now: number,
): TimelineSpan | undefined {
  return plan
    .filter((span) => span.person === person && span.duty === 'post' && span.fromAt <= now)
    .at(-1)
}

function reliefOf(plan: readonly TimelineSpan[], ending: TimelineSpan): TimelineSpan | undefined {
  return plan.find(
    ({ duty, post, person, fromAt, toAt }) =>
      duty === 'post' &&
      post === ending.post &&
      person !== ending.person &&
      fromAt <= ending.toAt &&
      toAt > ending.toAt,
  )
}

function nextWords(next: NextDuty, { now, timeZone }: PostSeen): string {
  const time = clockTime(next.startsAt, timeZone, { dayRelativeTo: now })
  return `${dutyWords(next.span.duty, next.span.post)}, about ${time}`
}

function elsewhere(duty: Duty | undefined, post: string | undefined): string {
  if (duty === undefined || duty === 'offDuty') return 'Off duty'
  return duty === 'controller' ? 'At the controller' : sentenceCase(dutyWords(duty, post))
}
