/** Who is here: what was said of each person, and the presses that say it. */
import type { State } from '@pitlamp/race'
import type { CrewNames } from '../../parts/crew.ts'
import { PRESENCE_WORD, type Presence } from '../../parts/penalty-words.ts'
import { sentenceCase } from '../../parts/moves.ts'
import { clockTime } from '../../parts/time.ts'
import type { Seen } from './people.ts'
import type { ToRecord } from './to-record.ts'

export const PRESENCES = ['here', 'late', 'away', 'unwell', 'wantsRelief'] as const
/** How long somebody is late or away, in minutes. Common practice, no source. */
export const ABSENT_MIN = [10, 20, 30, 60] as const
const MINUTE_MS = 60_000

export interface PersonHere {
  readonly id: string
  readonly name: string
  /** Undefined while nobody said. */
  readonly state?: Presence
  /** `late until 14:20`, `nothing said` */
  readonly words: string
}

export function whoIsHere({ state, crew }: Seen): readonly PersonHere[] {
  return crew.people.map(({ id, name }) => ({
    id,
    name,
    state: state.people.availability[id]?.state,
    words: presenceWords(state, id, crew) ?? 'nothing said',
  }))
}

/** Undefined where nothing was said. */
function presenceWords(state: State, person: string, crew: CrewNames): string | undefined {
  const said = state.people.availability[person]
  if (!said) return undefined
  const until = said.until === undefined ? '' : ` until ${clockTime(said.until, crew.timeZone)}`
  return `${PRESENCE_WORD[said.state]}${until}`
}

/** The same, but undefined for somebody who is simply here. */
export function absenceWords(state: State, person: string, crew: CrewNames): string | undefined {
  const said = state.people.availability[person]
  return said?.state === 'here' ? undefined : presenceWords(state, person, crew)
}

/** `minutes` from now, where it is known. */
export function presenceToRecord(
  person: string,
  state: Presence,
  { now, minutes }: { readonly now: number; readonly minutes?: number },
): ToRecord {
  const until = minutes === undefined ? undefined : now + minutes * MINUTE_MS
  const word = sentenceCase(PRESENCE_WORD[state])
  return { kind: 'availability.1', body: { person, state, until }, word }
}
