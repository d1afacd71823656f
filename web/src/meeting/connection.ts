/**
 * The socket to the server: hello, append, probe, and what the server says by itself. Nothing is emitted
 * while it is down, so nothing queues up where nobody sees it: what waits, waits in the outbox.
 */
import {
  appendedSchema,
  clockStandingSchema,
  presenceSchema,
  PROBE_EVERY_MS,
  probeAnswerSchema,
  problemSchema,
  PROTOCOL_VERSION,
  pushSchema,
  roleSaidSchema,
  SILENCE_MS,
  welcomeSchema,
  type Answer,
  type Appended,
  type ClockStanding,
  type DeviceReport,
  type Hello,
  type Presence,
  type Problem,
  type Push,
  type RoleSaid,
  type ScreenToServer,
  type ServerToScreen,
  type Welcome,
} from '@pitlamp/contract'
import type { Entry } from '@pitlamp/race'
import type { ProbeSample } from '@pitlamp/sync'
import { io, type Socket } from 'socket.io-client'

/** What happens on the line, for whoever listens. */
export interface Listener {
  /** What this screen says of itself on every new connection. */
  readonly introduce: () => Omit<Hello, 'protocol' | 'meeting'>
  readonly welcomed: (welcome: Welcome) => void
  readonly lost: () => void
  readonly refused: (problem: Problem) => void
  readonly pushed: (push: Push) => void
  readonly clockSaid: (standing: ClockStanding) => void
  readonly presenceSaid: (presence: Presence) => void
  readonly roleSaid: (said: RoleSaid) => void
  readonly sampled: (sample: ProbeSample) => void
  /** Nothing was heard for as long as a server that is there is never silent. */
  readonly quiet: () => void
}

const APPEND_PATIENCE_MS = 5_000
const RETRY_MS = 1_000
const BURST_PAUSE_MS = 40

export class Connection {
  readonly #meeting: string
  readonly #listener: Listener
  readonly #socket: Socket<ServerToScreen, ScreenToServer>
  #heardAtMs = -Infinity
  #beat: ReturnType<typeof setInterval> | undefined
  #quiet: ReturnType<typeof setTimeout> | undefined
  #bursting = false

  constructor(meeting: string, listener: Listener) {
    this.#meeting = meeting
    this.#listener = listener
    this.#socket = io({
      transports: ['websocket'],
      autoConnect: false,
      reconnectionDelay: 250,
      reconnectionDelayMax: RETRY_MS,
    })
    this.#listen()
  }

  open(): void {
    this.#socket.connect()
    this.#beat ??= setInterval(() => void this.#probe(), PROBE_EVERY_MS)
  }

  close(): void {
    clearInterval(this.#beat)
    this.#beat = undefined
    clearTimeout(this.#quiet)
    this.#socket.disconnect()
  }

  /** After sleep and the like: asks at once whether the line still stands. */
  nudge(): void {
    if (!this.#socket.connected && this.#beat !== undefined) this.#socket.connect()
  }

  /** Real milliseconds since the server was last heard. */
  get silentForMs(): number {
    return performance.now() - this.#heardAtMs
  }

  /** Undefined where no answer came in time; a problem is an answer. */
  async append(entries: readonly Entry[]): Promise<Answer<Appended> | undefined> {
    if (!this.#socket.connected) return undefined
    const answer: unknown = await this.#socket
      .timeout(APPEND_PATIENCE_MS)
      .emitWithAck('append', { meeting: this.#meeting, entries: [...entries] })
      .catch(() => undefined)
    return read(answer, appendedSchema)
  }

  /** How this device stands; false while nobody hears it. */
  report(report: DeviceReport): boolean {
    if (!this.#socket.connected) return false
    this.#socket.emit('report', report)
    return true
  }

  /** So many probes, each sent when the one before is answered, so that none waits behind another. */
  async burst(probes: number): Promise<void> {
    if (this.#bursting) return
    this.#bursting = true
    for (let sent = 0; sent < probes && (await this.#probe()); sent += 1) {
      await new Promise((resolve) => setTimeout(resolve, BURST_PAUSE_MS))
    }
    this.#bursting = false
  }

  async #probe(): Promise<boolean> {
    if (!this.#socket.connected) return false
    const t0 = performance.now()
    const answer: unknown = await this.#socket
      .timeout(SILENCE_MS)
      .emitWithAck('probe', { t0 })
      .catch(() => undefined)
    const t3 = performance.now()
    const { data } = probeAnswerSchema.safeParse(answer)
    if (data?.t0 !== t0) return false
    this.#heard()
    const { t1, t2, epoch } = data
    this.#listener.sampled({ t0, t1, t2, t3, epoch, dateNow: Date.now() })
    return true
  }

  async #hello(): Promise<void> {
    const hello: Hello = {
      protocol: PROTOCOL_VERSION,
      meeting: this.#meeting,
      ...this.#listener.introduce(),
    }
    const answer: unknown = await this.#socket
      .timeout(APPEND_PATIENCE_MS)
      .emitWithAck('hello', hello)
      .catch(() => undefined)
    const said = read(answer, welcomeSchema)
    if (said && 'ok' in said) {
      this.#heard()
      this.#listener.welcomed(said.ok)
      return
    }
    if (said) this.#listener.refused(said.problem)
    this.#startAgain()
  }

  #listen(): void {
    const { pushed, clockSaid, presenceSaid, roleSaid, refused, lost } = this.#listener
    this.#socket.on('connect', () => void this.#hello())
    this.#socket.on('disconnect', (reason) => {
      lost()
      // The server hung up: the library takes that as final, we do not.
      if (reason === 'io server disconnect') this.#startAgain()
    })
    this.#socket.on('connect_error', (error: Error & { data?: unknown }) => {
      const problem = problemSchema.safeParse(error.data).data
      if (problem) refused(problem)
      if (!this.#socket.active) this.#startAgain()
    })
    this.#socket.on('push', (said) => this.#pass(pushSchema.safeParse(said).data, pushed))
    this.#socket.on('clock', (said) =>
      this.#pass(clockStandingSchema.safeParse(said).data, clockSaid),
    )
    this.#socket.on('presence', (said) =>
      this.#pass(presenceSchema.safeParse(said).data, presenceSaid),
    )
    this.#socket.on('role', (said) => this.#pass(roleSaidSchema.safeParse(said).data, roleSaid))
  }

  #pass<T>(said: T | undefined, to: (said: T) => void): void {
    if (said === undefined) return
    this.#heard()
    to(said)
  }

  #heard(): void {
    this.#heardAtMs = performance.now()
    clearTimeout(this.#quiet)
    this.#quiet = setTimeout(this.#listener.quiet, SILENCE_MS + 1)
  }

  #startAgain(): void {
    this.#socket.disconnect()
    setTimeout(() => this.nudge(), RETRY_MS)
  }
}

interface Schema<T> {
  safeParse(value: unknown): { readonly success: boolean; readonly data?: T | undefined }
}

/** An answer is what was asked for or a problem; anything else is as good as none. */
function read<T>(answer: unknown, schema: Schema<T>): Answer<T> | undefined {
  if (typeof answer !== 'object' || answer === null) return undefined
  if ('ok' in answer) {
    const { data } = schema.safeParse(answer.ok)
    return data === undefined ? undefined : { ok: data }
  }
  const problem = 'problem' in answer ? problemSchema.safeParse(answer.problem).data : undefined
  return problem && { problem }
}
