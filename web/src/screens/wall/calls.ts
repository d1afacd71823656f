/** Calls from the wall: who can be called, the ready words, and those nobody has answered yet. */
import {
  counted,
  callsNow,
  dutyOf,
  THE_WALL,
  type CallNow,
  type Duty,
  type State,
} from '@pitlamp/race'
import type { CrewNames } from '../../parts/crew.ts'
import { DUTY_WORD } from '../../parts/moves.ts'
import type { CallShown } from '../../parts/shown.ts'
import { clockTime } from '../../parts/time.ts'
import type { Seen } from './people.ts'
import type { ToRecord } from './to-record.ts'

const DRIVER: readonly string[] = [
  'Come in this lap',
  'Come in next lap',
  'Stay out',
  'Slow down, keep it in the slot',
]
const OTHERS: readonly string[] = [
  'Come to the pit box',
  'You drive next, get ready',
  'Your relief is late, please stay',
  'Go and rest',
]

/** What is said most, so that nobody types it. Common practice, no source. */
export function readyWords(duty: Duty | undefined): readonly string[] {
  return duty === 'controller' ? DRIVER : OTHERS
}

/** Minutes until a wake-up call. Common practice, no source. */
export const WAKE_MIN = [15, 30, 60] as const
const MINUTE_MS = 60_000

export function wakeUp(person: string, now: number, minutes: number): ToRecord {
  const body = { person, words: 'Time to get up', dueAt: now + minutes * MINUTE_MS }
  return { kind: 'call.1', body, word: `Wake-up call in ${minutes} min` }
}

/** Those that wait for an answer first, in the order of the log; wake-up calls to come after them. */
export function openCalls({ state, now, crew }: Seen): readonly CallShown[] {
  return callsNow(state, now)
    .map((call) => callShown(call, crew))
    .sort((a, b) => Number(a.ahead) - Number(b.ahead))
}

function callShown({ call, dueAt, state, repetition, to }: CallNow, crew: CrewNames): CallShown {
  const { entry, body } = call
  const at = clockTime(dueAt, crew.timeZone)
  const name = crew.nameOf(body.person)
  const ahead = state === 'ahead'
  return {
    id: entry,
    ahead,
    calledAt: dueAt,
    words: ahead ? `Wake-up call ${at}: ${name}` : `${at} to ${name}: ${body.words}`,
    so: ahead ? undefined : soWords(repetition, state === 'passedOn' ? to : undefined, crew),
  }
}

function soWords(
  repetition: number,
  passedTo: string | undefined,
  crew: CrewNames,
): string | undefined {
  const to = passedTo === THE_WALL ? 'the wall' : passedTo && crew.nameOf(passedTo)
  const words = [
    ...(repetition > 0 ? [`called ${counted(repetition + 1, 'time')}`] : []),
    ...(to === undefined ? [] : [`passed on to ${to}`]),
  ]
  return words.length === 0 ? undefined : words.join(', ')
}

export interface Callable {
  readonly id: string
  readonly word: string
  readonly hint?: string
  readonly ready: readonly string[]
}

/** Everybody in the crew, whoever drives first: that is who gets called. */
export function callable(state: State, crew: CrewNames): readonly Callable[] {
  const people = crew.people.map(({ id, name }) => {
    const duty = dutyOf(state, id)?.duty
    return { id, word: name, hint: duty && DUTY_WORD[duty], ready: readyWords(duty) }
  })
  const drives = ({ hint }: Callable) => (hint === DUTY_WORD.controller ? 0 : 1)
  return people.sort((a, b) => drives(a) - drives(b))
}
