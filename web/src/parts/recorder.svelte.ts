/** Records presses for a screen and remembers the last, so that it can be taken back from its own place. */
import type { Body, Kind } from '@pitlamp/race'
import type { MeetingPort } from '../meeting/port.ts'
import { clockTime } from './time.ts'
import type { UndoShown } from './verb.ts'

export interface Pressed<K extends Kind> {
  readonly kind: K
  readonly body: Body<K>
  /** What the undo calls it. */
  readonly word: string
  readonly place: number
}

export class Recorder {
  readonly #meeting: () => MeetingPort
  readonly #timeZone: () => string
  #last = $state.raw<UndoShown>()

  constructor(meeting: () => MeetingPort, timeZone: () => string) {
    this.#meeting = meeting
    this.#timeZone = timeZone
  }

  /** The id of the entry. */
  record<K extends Kind>({ kind, body, word, place }: Pressed<K>): string {
    const meeting = this.#meeting()
    const entry = meeting.press(kind, body)
    const time = clockTime(meeting.now, this.#timeZone(), { seconds: true })
    this.#last = { entry, words: `${word} recorded ${time}`, place }
    return entry
  }

  /** Shown while the meeting can still take it back. */
  readonly undo = $derived.by((): UndoShown | undefined => {
    const last = this.#last
    return last !== undefined && this.#meeting().undoable?.entry === last.entry ? last : undefined
  })

  readonly takeBack = (): void => {
    this.#meeting().undo()
  }
}
