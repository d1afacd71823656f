/** The devices of the team and what each may do; the server's clock where it is in doubt. */
import type { Device } from '@pitlamp/contract'
import { may, type Role } from '@pitlamp/race'
import type { Reply } from '../../api/ask.ts'
import { askClock, askDevices, changeDevice, settleClock } from '../../api/team.ts'
import type { MeetingPort } from '../../meeting/port.ts'

export class TeamModel {
  readonly #of: () => MeetingPort
  devices = $state.raw<readonly Device[]>([])
  problem = $state<string>()
  /** The device a second press takes out. */
  leaving = $state<string>()

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
  }

  readonly mayLead = $derived.by(() => may(this.#of().role, { do: 'manageDevices' }))
  readonly here = $derived.by(() => this.devices.filter(({ revokedAt }) => revokedAt === undefined))
  readonly gone = $derived.by(() => this.devices.filter(({ revokedAt }) => revokedAt !== undefined))
  /** The server's time, as good as now: this device has just been seen asking. */
  readonly lastSeenAt = $derived.by(() =>
    Math.max(0, ...this.devices.map(({ seenAt = 0 }) => seenAt)),
  )
  readonly doubt = $derived.by(() => this.#of().clock.doubt)

  /** Connected to this meeting just now. */
  isLive(device: string): boolean {
    return this.#of().screens.some((screen) => screen.device === device)
  }

  async load(): Promise<void> {
    const reply = await askDevices()
    if ('ok' in reply) this.devices = reply.ok.devices
    else this.problem = reply.failed.sentence
  }

  async changeRole(device: string, role: Role): Promise<void> {
    await this.#change(changeDevice(device, { role }))
  }

  async takeOut(device: string): Promise<void> {
    if (this.leaving !== device) {
      this.leaving = device
      return
    }
    this.leaving = undefined
    await this.#change(changeDevice(device, { revoked: true }))
  }

  /** Sets the server's clock, or vouches for it as it is with 0. */
  async settle(shiftMs: number): Promise<void> {
    const standing = await askClock()
    if ('failed' in standing) this.problem = standing.failed.sentence
    else await this.#change(settleClock({ epoch: standing.ok.epoch, shiftMs }))
  }

  async #change(request: Promise<Reply<unknown>>): Promise<void> {
    const reply = await request
    this.problem = 'failed' in reply ? reply.failed.sentence : undefined
    await this.load()
  }
}
