/** From a press to the outbox: numbered, kept, undone within ten seconds; and said plainly where it could not be kept. */
import {
  bodyLimitBytes,
  bodyProblem,
  ENVELOPE_VERSION,
  mayRecord,
  type Body,
  type Entry,
  type Kind,
  type Role,
} from '@pitlamp/race'
import { v7 } from 'uuid'
import type { Outbox, WhyNotKept } from './outbox.ts'
import type { Trouble, Undoable } from './port.ts'

const UNDO_REAL_MS = 10_000

const NOT_KEPT: Readonly<Record<WhyNotKept, string>> = {
  full: 'This device’s storage is full. What was pressed last is held only by this open page: leave it open until everything is saved, and free some space.',
  unavailable:
    'This browser keeps nothing on this device. What is pressed here is held only by this open page: leave it open until everything is saved.',
}
const MAY_NOT =
  'This device may not record that. Nothing was recorded: ask the captain for another role.'
const TOO_LONG = 'That is too long for one entry. Nothing was recorded: make it shorter.'

interface Surroundings {
  readonly outbox: Outbox
  readonly device: string
  readonly role: () => Role
  readonly person: () => string | undefined
  readonly time: () => Pick<Entry, 'at' | 'atBoundMs' | 'epoch'>
  readonly isOwn: (entry: string) => boolean
  readonly recorded: (entry: Entry) => void
}

export class Presses {
  undoable = $state.raw<Undoable | undefined>()
  /** Entries that exist on this page only, until the server has them. */
  #unkept = $state.raw<readonly { readonly entry: string; readonly why: WhyNotKept }[]>([])
  #refused = $state.raw<readonly Trouble[]>([])
  /** Made on this page: its own before the fold has seen them. */
  readonly #made: string[] = []
  readonly #around: Surroundings

  constructor(around: Surroundings) {
    this.#around = around
  }

  get troubles(): readonly Trouble[] {
    const [first] = this.#unkept
    return first === undefined
      ? this.#refused
      : [{ id: 'notKept', sentence: NOT_KEPT[first.why] }, ...this.#refused]
  }

  press<K extends Kind>(kind: K, body: Body<K>): string {
    const { outbox, device, role, person, time, recorded } = this.#around
    const isOwn = (entry: string) => this.#made.includes(entry) || this.#around.isOwn(entry)
    const id = v7()
    const text = JSON.stringify(body)
    const wrong = mayRecord(role(), { kind, body }, isOwn) ? unfit(kind, body, text) : MAY_NOT
    if (wrong !== undefined) {
      this.#refused = [...this.#refused, { id, sentence: wrong }]
      return id
    }
    this.#made.push(id)
    const held = person()
    const press = {
      v: ENVELOPE_VERSION,
      id,
      device,
      ...(held === undefined ? {} : { person: held }),
      ...time(),
      kind,
      body: text,
    } as const
    if (kind !== 'correction.1') this.#offerUndo(id, kind)
    void outbox.record(press).then(({ entry, notKept }) => {
      if (notKept) this.#unkept = [...this.#unkept, { entry: id, why: notKept }]
      recorded(entry)
    })
    return id
  }

  isUnkept(entry: string): boolean {
    return this.#unkept.some((one) => one.entry === entry)
  }

  takeUndo(): string | undefined {
    const entry = this.undoable?.entry
    this.undoable = undefined
    return entry
  }

  dismiss(id: string): void {
    this.#refused = this.#refused.filter((trouble) => trouble.id !== id)
  }

  /** The log has changed: what is saved needs this page no longer. */
  settle(isSaved: (entry: string) => boolean): void {
    if (this.#unkept.length === 0) return
    this.#unkept = this.#unkept.filter(({ entry }) => !isSaved(entry))
  }

  #offerUndo(entry: string, kind: Kind): void {
    this.undoable = { entry, kind, untilRealMs: performance.now() + UNDO_REAL_MS }
    setTimeout(() => {
      if (this.undoable?.entry === entry) this.undoable = undefined
    }, UNDO_REAL_MS)
  }
}

/** Why this body would be refused by any server, so that it is not even kept. */
function unfit(kind: Kind, body: unknown, text: string): string | undefined {
  if (new TextEncoder().encode(text).length > bodyLimitBytes(kind)) return TOO_LONG
  const problem = bodyProblem(kind, body)
  return problem === undefined ? undefined : `Nothing was recorded. ${problem}`
}
