/**
 * A screen without a picture, in this process: it joins with a code, keeps its side of the log with
 * @pitlamp/sync and its clock by probes, and folds with @pitlamp/race, as a tablet does. What a tablet
 * puts into IndexedDB is here the machine's own state, so it outlives the server but not the test.
 */
import { setTimeout as sleep } from 'node:timers/promises'
import {
  PROTOCOL_VERSION,
  entriesPageSchema,
  meetingTime,
  type Answer,
  type Appended,
  type ClockStanding,
  type ProbeAnswer,
  type ScreenToServer,
  type ServerToScreen,
  type Welcome,
} from '@pitlamp/contract'
import {
  ENVELOPE_VERSION,
  fold,
  readEntry,
  type Body,
  type Entry,
  type Kind,
  type RecordedEntry,
  type State,
} from '@pitlamp/race'
import {
  cursor,
  initialSync,
  savedState,
  step,
  view,
  type Effect,
  type Kept,
  type Reckoning,
  type SavedState,
  type SyncEvent,
  type SyncState,
} from '@pitlamp/sync'
import { io, type Socket } from 'socket.io-client'
import { v7 as uuidV7 } from 'uuid'
import type { Acknowledged } from './audit.ts'
import type { Device } from './device.ts'
import { ProbedClock } from './probed-clock.ts'

const ANSWER_WITHIN_MS = 3_000
const UNTIL_MS = 30_000
const NOTHING = { confirmed: [], pending: [], setAside: [] }

type Wire = Socket<ServerToScreen, ScreenToServer>

export class Screen {
  readonly device: Device
  readonly meeting: string
  /** As last heard: in the welcome, and by the clock event. */
  clockStanding: ClockStanding | undefined
  sync: SyncState
  /** Own entries that were shown as saved, by id, and their number: never forgotten, whatever becomes of the log. */
  readonly acknowledged = new Map<string, Acknowledged>()
  /** Called with what has joined the confirmed log. */
  onConfirmed: ((entries: readonly RecordedEntry[]) => void) | undefined
  /** Called with the id of an own entry that is saved from now on. */
  onSaved: ((id: string) => void) | undefined
  #welcome: Welcome | undefined
  #n = 0
  readonly #socket: Wire
  readonly #clock: ProbedClock

  /** With what it has kept of the meeting, where it was there before. */
  constructor(device: Device, meeting: string, kept: Omit<Kept, 'device'> = NOTHING) {
    this.device = device
    this.meeting = meeting
    this.sync = initialSync(meeting, { ...kept, device: device.id })
    const made = view(this.sync).filter((entry) => entry.device === device.id)
    this.#n = Math.max(0, ...made.map(({ n }) => n))
    this.#socket = io(device.url, {
      transports: ['websocket'],
      extraHeaders: device.headers,
      reconnectionDelay: 50,
      reconnectionDelayMax: 200,
      forceNew: true,
    })
    this.#socket.on('connect', () => void this.#hello())
    this.#socket.on('disconnect', () => this.#happened({ what: 'disconnected' }))
    this.#socket.on('push', (push) => this.#happened({ what: 'pushed', push }))
    this.#socket.on('clock', (standing) => this.#heardClock(standing))
    this.#clock = new ProbedClock((t0) => this.#ask<ProbeAnswer>('probe', { t0 }))
  }

  /** Records what happened now, or at the meeting time given. */
  press<K extends Kind>(kind: K, body: Body<K>, at = this.now()): Entry {
    const { boundMs, epoch } = this.reckoning()
    const entry: Entry = {
      v: ENVELOPE_VERSION,
      id: uuidV7(),
      device: this.device.id,
      n: ++this.#n,
      at: Math.round(at),
      atBoundMs: Math.ceil(boundMs),
      epoch,
      kind,
      body: JSON.stringify(body),
    }
    this.#happened({ what: 'pressed', entry })
    return entry
  }

  state(): State {
    return fold(view(this.sync).map(readEntry))
  }

  /** Server time as this screen reckons it. */
  reckoning(): Reckoning {
    return this.#clock.reckoning()
  }

  /** Meeting time, whole ms. */
  now(): number {
    if (!this.#welcome) throw new Error('This screen has not been welcomed yet.')
    return meetingTime(this.#welcome.meeting.clock, this.reckoning().serverMs)
  }

  saved(entry: Entry): SavedState | undefined {
    return savedState(this.sync, entry.id)
  }

  /** Entries made so far. */
  get n(): number {
    return this.#n
  }

  get connected(): boolean {
    return this.sync.connected
  }

  /** Waits for what the server or another screen will bring about; says what never came. */
  async until(what: string, holds: (screen: this) => boolean): Promise<void> {
    const latest = performance.now() + UNTIL_MS
    while (!holds(this)) {
      if (performance.now() > latest) throw new Error(`${this.device.name} waited in vain: ${what}`)
      await sleep(5)
    }
  }

  /** Connected, with the whole log, and its clock set. */
  async live(): Promise<this> {
    await this.until('to be live', () => this.connected && this.sync.heardOf === cursor(this.sync))
    await this.until('for its clock', () => this.reckoning().standing === 'set')
    return this
  }

  /** The network is gone, and comes back: what is pressed meanwhile stays here until it does. */
  cutOff(): void {
    this.#socket.disconnect()
  }
  reconnect(): void {
    this.#socket.connect()
  }

  close(): void {
    this.#clock.stop()
    this.#socket.close()
  }

  async #hello(): Promise<void> {
    const answer = await this.#ask<Answer<Welcome>>('hello', {
      protocol: PROTOCOL_VERSION,
      meeting: this.meeting,
      after: cursor(this.sync),
      reckoned: this.#clock.reckoned(),
    })
    if (answer === undefined) return this.#socket.connected ? this.#hello() : undefined
    if ('problem' in answer) throw new Error(`${this.device.name}: ${answer.problem.title}`)
    this.#welcome = answer.ok
    this.#heardClock(answer.ok.clock)
    this.#clock.connected()
    this.#happened({ what: 'connected', last: answer.ok.meeting.lastSeq })
  }

  #heardClock(standing: ClockStanding): void {
    this.clockStanding = standing
    this.#clock.heardEpoch(standing.epoch)
  }

  #happened(event: SyncEvent): void {
    const { state, effects } = step(this.sync, event)
    const before = cursor(this.sync)
    this.sync = state
    if (cursor(state) > before) this.#note(state.confirmed.slice(before))
    effects.forEach((effect) => void this.#do(effect))
  }

  async #do(effect: Effect): Promise<void> {
    switch (effect.do) {
      case 'keep':
        return
      case 'wait':
        await sleep(effect.forMs)
        this.#happened({ what: 'waited', before: effect.before })
        return
      case 'append':
        return this.#append(effect)
      case 'fetch':
        return this.#fetch(effect)
    }
  }

  async #append({ batch, entries }: Extract<Effect, { do: 'append' }>): Promise<void> {
    const answer = await this.#ask<Answer<Appended>>('append', { meeting: this.meeting, entries })
    if (answer && 'ok' in answer) {
      for (const [index, result] of answer.ok.results.entries()) {
        const entry = entries[index]
        if (result.outcome === 'refused' || !entry) continue
        this.#saved(entry, result.seq)
      }
      this.#happened({ what: 'appended', batch, appended: answer.ok })
    } else {
      this.#happened({ what: 'appendFailed', batch, ...answer })
    }
  }

  /** An entry may arrive in the log though its answer was lost: that shows it as saved, too. */
  #note(confirmed: readonly RecordedEntry[]): void {
    for (const { seq, recordedAt: _at, role: _role, ...entry } of confirmed) {
      if (entry.device === this.device.id) this.#saved(entry, seq)
    }
    this.onConfirmed?.(confirmed)
  }

  #saved(entry: Entry, seq: number): void {
    const isNew = !this.acknowledged.has(entry.id)
    this.acknowledged.set(entry.id, { entry, seq })
    if (isNew) this.onSaved?.(entry.id)
  }

  async #fetch({ request, after }: Extract<Effect, { do: 'fetch' }>): Promise<void> {
    try {
      const path = `/api/meetings/${this.meeting}/entries?after=${after}`
      const page = entriesPageSchema.parse(await this.device.call('GET', path))
      this.#happened({ what: 'fetched', request, page })
    } catch {
      this.#happened({ what: 'fetchFailed', request })
    }
  }

  /** The answer, or undefined where none came in time. */
  async #ask<A>(event: keyof ScreenToServer, message: unknown): Promise<A | undefined> {
    if (!this.#socket.connected) return undefined
    const socket = this.#socket.timeout(ANSWER_WITHIN_MS) as unknown as Socket
    return socket.emitWithAck(event, message).then(
      (answer) => answer as A,
      () => undefined,
    )
  }
}
