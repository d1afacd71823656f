/** Calls from the wall: who can be called, the ready words, and those nobody has answered yet. */
import { dutyOf, type Duty, type State } from '@pitlamp/race'
import type { CrewNames } from '../../parts/crew.ts'
import { DUTY_WORD } from '../../parts/moves.ts'
import { clockTime } from '../../parts/time.ts'
import type { Seen } from './people.ts'

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
function readyWords(duty: Duty | undefined): readonly string[] {
  return duty === 'controller' ? DRIVER : OTHERS
}

export interface OpenCall {
  readonly id: string
  readonly at: number
  readonly words: string
}

export function openCalls({ state, crew }: Omit<Seen, 'now'>): readonly OpenCall[] {
  return unanswered(state).map(({ entry, at, body }) => ({
    id: entry,
    at,
    words: `${clockTime(at, crew.timeZone)} to ${crew.nameOf(body.person)}: ${body.words}`,
  }))
}

/** Oldest first; only the last call to a person is still meant. */
export function unanswered(state: State) {
  const last = new Map(state.people.calls.map((call) => [call.body.person, call]))
  return [...last.values()].filter(({ answer }) => answer === undefined)
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
