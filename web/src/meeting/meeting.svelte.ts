/** A meeting as this screen has it: outbox, line to the server, clock and fold behind one port. */
import { may, type Body, type Kind, type LogLine } from '@pitlamp/race'
import {
  cursor,
  initialSync,
  reckonedByWall,
  savedState,
  setAsideSentence,
  unsentCount,
  type Kept,
  type SyncEvent,
  type SyncState,
  type WallReckoning,
} from '@pitlamp/sync'
import type { Alerts } from './alerts.svelte.ts'
import type { Hearing } from './due-alerts.ts'
import { fetchedEngine } from './fetched-engine.ts'
import { Folded } from './folded.svelte.ts'
import { Line, type Ears, type Known } from './line.svelte.ts'
import { Outbox } from './outbox.ts'
import { Notices } from './notices.svelte.ts'
import type { MeetingPort, Saved } from './port.ts'
import { Presses } from './presses.svelte.ts'
import type { Replica } from './replica.ts'
import { ScreenClock } from './screen-clock.svelte.ts'
import { sound } from './sound.svelte.ts'

export interface Opened extends Known {
  readonly kept: Kept
  readonly heard: readonly string[]
  readonly person: string | undefined
  readonly wall: WallReckoning | undefined
}

export class Meeting implements MeetingPort {
  person = $state<string>()
  #log: SyncState
  readonly #notices = new Notices()
  readonly #memory: Opened['memory']
  readonly #heard: readonly string[]
  readonly #outbox: Outbox
  readonly #line: Line
  readonly #clock: ScreenClock
  readonly #folded: Folded
  readonly #presses: Presses
  /** The two that come after the first picture. */
  #engine: Awaited<ReturnType<typeof fetchedEngine>> | undefined
  #replica: Replica | undefined
  #alerts = $state.raw<Alerts>()
  /** What happened before the machine was here. */
  readonly #early: SyncEvent[] = []
  #hearing: Hearing = 'none'
  #isOpen = false

  constructor(opened: Opened) {
    const { memory, me, info } = opened
    const device = me.device.id
    this.#memory = memory
    this.#log = $state.raw(initialSync(info.id, opened.kept))
    this.person = opened.person
    this.#heard = opened.heard
    this.#outbox = new Outbox({ meeting: info.id, device, store: memory.store })
    this.#line = new Line(opened, this.#ears())
    this.#clock = new ScreenClock(info.clock, {
      kept: opened.wall,
      keep: (wall) => void memory.rememberWall(wall),
      burst: (probes) => this.#line.burst(probes),
      beat: () => this.#beat(),
      woke: () => this.#wake(),
    })
    this.#folded = new Folded(this.#log, me.device.role)
    this.#presses = new Presses({
      outbox: this.#outbox,
      device,
      role: () => this.role,
      person: () => this.person,
      time: () => this.#clock.read(),
      isOwn: (entry) => this.#logLine(entry)?.entry.device === device,
      recorded: (entry) => this.#take({ what: 'pressed', entry }),
    })
  }

  /** Begins to count, and to talk to the server as soon as the code for that is here. */
  async open(): Promise<void> {
    this.#isOpen = true
    this.#clock.start()
    const engine = await fetchedEngine()
    if (!this.#stillOpen()) return
    this.#engine = engine
    const { Alerts, Connection, Replica } = engine
    this.#replica = new Replica(this.#log, {
      outbox: this.#outbox,
      line: this.#line,
      changed: (log) => this.#changed(log),
      notKept: this.#notices.copyNotKept,
    })
    for (const event of this.#early.splice(0)) this.#take(event)
    this.#alerts = new Alerts(this.#heard, (alert, at) => {
      void this.#memory.rememberHeard(this.id, { alert, at })
    })
    this.hears(this.#hearing)
    this.#line.open(Connection)
  }

  close(): void {
    this.#isOpen = false
    this.#clock.stop()
    this.#line.close()
  }

  #stillOpen(): boolean {
    return this.#isOpen
  }

  /** Whose alerts this screen sounds; the screen on show says so. */
  hears(hearing: Hearing): void {
    this.#hearing = hearing
    if (this.#alerts) this.#alerts.hearing = hearing
  }

  get id() {
    return this.#line.info.id
  }
  get name() {
    return this.#line.info.name
  }
  get fictional() {
    return this.#line.info.fictional
  }
  get rate() {
    return this.#line.info.clock.rate
  }
  get role() {
    return this.#line.me.device.role
  }
  get device() {
    return this.#line.me.device.id
  }
  readonly deviceName = (device: string) => this.#line.names[device]
  get state() {
    return this.#folded.state
  }
  get now() {
    return this.#clock.now
  }
  get clock() {
    return this.#clock.shown
  }
  get connection() {
    return this.#line.standing
  }
  get silentForMs() {
    return this.#line.silentForMs
  }
  get problem() {
    return this.#line.problem
  }
  get screens() {
    return this.#line.screens
  }
  get wall() {
    return this.#line.wall
  }
  /** The server has told of entries that are still on their way to this screen. */
  get isBehind() {
    return cursor(this.#log) < this.#line.info.lastSeq
  }
  get keptHere() {
    return unsentCount(this.#log)
  }
  get refused() {
    return this.#log.setAside.map(({ entry, why, detail }) => ({
      entry: entry.id,
      sentence: [setAsideSentence(why), detail].filter(Boolean).join(' '),
    }))
  }
  get undoable() {
    return this.#presses.undoable
  }
  get alerts() {
    return this.#alerts?.shown ?? []
  }
  get muted() {
    return sound.muted
  }
  get troubles() {
    return [...this.#presses.troubles, ...this.#notices.list]
  }

  press<K extends Kind>(kind: K, body: Body<K>): string {
    return this.#presses.press(kind, body)
  }

  undo(): void {
    const entry = this.#presses.takeUndo()
    if (entry !== undefined) this.correct(entry, { what: 'void' }, 'Undone at once')
  }

  correct(target: string, change: Body<'correction.1'>['change'], reason: string): void {
    const basedOn = this.#logLine(target)?.basedOn ?? target
    this.press('correction.1', { target, basedOn, change, reason })
  }

  saved(entry: string): Saved {
    const state = savedState(this.#log, entry)
    if (state === 'keptOnThisDevice' && this.#presses.isUnkept(entry)) return 'onlyOnThisPage'
    return state ?? 'onlyOnThisPage'
  }

  readonly copied = async () =>
    this.#engine?.copied(this.#log, {
      ...{ line: this.#line, memory: this.#memory, asOf: this.#clock.read().at },
    })

  may(kind: Kind): boolean {
    return may(this.role, { do: 'record', kind })
  }

  holdBy(person: string | undefined): void {
    this.person = person
    void this.#memory.rememberPerson(person)
  }

  readonly sendAgain = (entry?: string): void =>
    this.#take({ what: 'retrySetAside', ...(entry === undefined ? {} : { ids: [entry] }) })

  dismiss(id: string): void {
    this.#alerts?.dismiss(id)
    this.#presses.dismiss(id)
    this.#notices.dismiss(id)
  }

  mute(muted: boolean): void {
    sound.mute(muted)
  }

  #take(event: SyncEvent): void {
    if (this.#replica) this.#replica.take(event)
    else this.#early.push(event)
  }

  #logLine(entry: string): LogLine | undefined {
    return this.state.record.log.find((line) => line.entry.id === entry)
  }

  #changed(log: SyncState): void {
    this.#log = log
    this.#folded.change(log, this.role)
    this.#presses.settle((entry) => savedState(log, entry) === 'saved')
  }

  #beat(): void {
    this.#line.watch()
    if (!this.#alerts) return
    const moment = this.#moment()
    // While nobody looks the fold is left alone, unless something would be heard on what it last said.
    if (document.visibilityState === 'hidden') {
      if (!this.#alerts.anythingDue(moment)) return
      this.#folded.freshen()
    }
    this.#alerts.check({ ...moment, state: this.state })
  }

  #wake(): void {
    this.#line.nudge()
    this.#folded.freshen()
    this.#beat()
  }

  #moment() {
    const { at: now } = this.#clock.read()
    return { state: this.state, now, rate: this.rate, person: this.person }
  }

  #ears(): Ears {
    return {
      introduce: () => {
        const { wall } = this.#clock
        const reckoned = wall && reckonedByWall(wall, Date.now())
        return { after: cursor(this.#log), ...(reckoned ? { reckoned } : {}) }
      },
      welcomed: ({ meeting, clock }) => {
        this.#clock.said(clock, meeting.clock)
        this.#clock.reconnected()
        this.#take({ what: 'connected', last: meeting.lastSeq })
      },
      lost: () => this.#take({ what: 'disconnected' }),
      pushed: (push) => this.#take({ what: 'pushed', push }),
      clockSaid: (standing) => this.#clock.said(standing),
      sampled: (sample) => this.#clock.sampled(sample),
      roleChanged: () => this.#folded.change(this.#log, this.role),
      wallGone: this.#notices.wallGone,
      report: () =>
        this.#engine?.deviceReport({ meeting: this.id, person: this.person, clock: this.clock }),
      takenOut: () => void this.#engine?.handOver(this.#log),
    }
  }
}
