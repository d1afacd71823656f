/** The team's other meetings: who of the crew is asked to be in two places at one time. */
import type { Meeting as Info } from '@pitlamp/contract'
import { doubleBooked, planTimeline, type State, type Timeline } from '@pitlamp/race'
import { askMe } from '../api/meeting.ts'
import { askMeetings } from '../api/team.ts'
import { Memory } from '../meeting/memory.ts'
import { peek } from '../meeting/peek.ts'
import { dutyWords } from '../parts/moves.ts'
import { clockTime } from '../parts/time.ts'

/** Reading a whole log is worth it for the latest few. */
const LOOKED_INTO = 6

export interface OtherPlan {
  readonly name: string
  readonly timeline: Timeline
}

/** What the other meetings plan, where they plan by the clock; nothing without a server. */
export async function otherPlans(own: string, now: number): Promise<readonly OtherPlan[]> {
  const [me, reply] = await Promise.all([askMe(), askMeetings()])
  if ('failed' in me || 'failed' in reply) return []
  const memory = await Memory.open()
  const others = reply.ok.meetings
    .filter(({ id, lastSeq, fictional }) => id !== own && lastSeq > 0 && !fictional)
    .sort((a, b) => b.createdAt - a.createdAt)
    .slice(0, LOOKED_INTO)
  const read = async (info: Info): Promise<OtherPlan | undefined> => {
    const state = await peek(memory, info, me.ok.device.id).catch(() => undefined)
    if (!state || !isByTheClock(state)) return undefined
    return { name: info.name, timeline: planTimeline(state, now) }
  }
  const found = await Promise.all(others.map(read))
  return found.filter((one) => one !== undefined)
}

/** Without a time in the programme, and before the first green, a plan counts from a green nobody knows. */
function isByTheClock({ documents, raceControl }: State): boolean {
  const programme = documents.rules.at(-1)?.content.programme ?? []
  return raceControl.runs.length > 0 || programme.some(({ plannedAt }) => plannedAt !== undefined)
}

export interface Saying {
  readonly timeZone: string
  readonly nameOf: (person: string) => string
}

/** `Ida Quill: drives here, post 2 in Lantern Relay, Sat 14:10 to 14:30` */
export function doubledWords(
  own: Timeline,
  others: readonly OtherPlan[],
  { timeZone, nameOf }: Saying,
): readonly string[] {
  return others.flatMap(({ name, timeline }) =>
    doubleBooked(own, timeline).map(({ person, one, other, fromAt, toAt }) => {
      const from = clockTime(fromAt, timeZone, { dayRelativeTo: 0 })
      const to = clockTime(toAt, timeZone, { dayRelativeTo: fromAt })
      const [here, there] = [dutyOf(one), dutyOf(other)]
      return `${nameOf(person)}: ${here} here, ${there} in ${name}, ${from} to ${to}`
    }),
  )
}

function dutyOf({ duty, post }: Timeline['spans'][number]): string {
  return duty === 'controller' ? 'drives' : dutyWords(duty, post)
}
