/**
 * A stint that goes on: what the rules make of it, and whom it moves. It brings every check with it, so it is
 * fetched on its own after the first picture.
 */
import { stayOut, type MovedSpan, type StayOutChoice } from '@pitlamp/race'
import { DUTY_WORD } from '../../parts/moves.ts'
import { clockTime } from '../../parts/time.ts'
import type { Seen } from './people.ts'
import type { ToRecord } from './to-record.ts'

const MINUTE_MS = 60_000

export interface StayChoiceShown {
  readonly id: string
  readonly word: string
  /** `the rules allow it`, or the first rule it breaks. */
  readonly hint: string
  readonly breaks: readonly string[]
  /** `Ben drives 5 min later` */
  readonly moves: readonly string[]
  readonly records: ToRecord
}

export interface StayOutShown {
  /** `Ada, planned end 11:40` */
  readonly who: string
  /** `The rules allow 12 min more` */
  readonly allowed: string
  readonly stoppedBy: readonly string[]
  readonly choices: readonly StayChoiceShown[]
}

/** Undefined where nobody drives, or no handover is ahead in this segment. */
export function stayOutShown({ state, now, crew }: Seen): StayOutShown | undefined {
  const stay = stayOut(state, now)
  if (!stay) return undefined
  return {
    who: `${crew.nameOf(stay.person)}, change about ${clockTime(stay.endsAt, crew.timeZone)}`,
    allowed:
      stay.allowedMs === 0
        ? 'The rules allow no longer stint'
        : `The rules allow ${minutes(stay.allowedMs)} more`,
    stoppedBy: sentences(stay.stoppedBy),
    choices: stay.choices.map((choice) => choiceShown(choice, stay.body, crew.nameOf)),
  }
}

function choiceShown(
  { byMs, movesMs, allowed, breaks, moves }: StayOutChoice,
  body: { readonly segment: string; readonly boundaryMs: number },
  nameOf: (person: string) => string,
): StayChoiceShown {
  const words = minutes(byMs)
  const short = movesMs < byMs ? `, ${minutes(movesMs)} to the next change` : ''
  return {
    id: words,
    word: `Stay out ${words} more`,
    hint: `${allowed ? 'the rules allow it' : 'breaks a rule'}${short}`,
    breaks: sentences(breaks),
    moves: told(moves).map((move) => movedWords(move, nameOf)),
    records: { kind: 'stayOut.1', body: { ...body, byMs }, word: `Stay out ${words} more` },
  }
}

/** One line a person: when they begin later, it goes without saying that they end what they do later. */
function told(moves: readonly MovedSpan[]): readonly MovedSpan[] {
  const begin = new Set(moves.flatMap(({ what, person }) => (what === 'ends' ? [] : person)))
  return moves.filter(({ what, person }) => what !== 'ends' || !begin.has(person))
}

function movedWords(
  { person, duty, post, what, byMs }: MovedSpan,
  nameOf: (person: string) => string,
): string {
  const where = post === undefined ? DUTY_WORD[duty].toLowerCase() : `post ${post}`
  if (what === 'dropped') return `${nameOf(person)}, ${where}: left out`
  return `${nameOf(person)}, ${where}: ${what} ${minutes(byMs)} later`
}

function minutes(ms: number): string {
  return `${Math.floor(ms / MINUTE_MS)} min`
}

function sentences(findings: readonly { readonly sentence: string }[]): readonly string[] {
  return [...new Set(findings.map(({ sentence }) => sentence))]
}
