/** The devices of the team and what each may do; the server's clock where it is in doubt. */
import type { Device } from '@pitlamp/contract'
import { may, type Role } from '@pitlamp/race'
import type { Reply } from '../../api/ask.ts'
import { askClock, askDevices, changeDevice, settleClock } from '../../api/team.ts'
import type { MeetingPort } from '../../meeting/port.ts'
import { deviceRow, portParts, type Row } from './device-row.ts'

export class TeamModel {
  readonly #of: () => MeetingPort
  devices = $state.raw<readonly Device[]>([])
  problem = $state<string>()
  /** The device that goes if it is meant. */
  leaving = $state<string>()

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
  }

  readonly mayLead = $derived.by(() => may(this.#of().role, { do: 'manageDevices' }))
  readonly here = $derived.by(() => this.devices.filter(({ revokedAt }) => revokedAt === undefined))
  readonly gone = $derived.by(() => this.devices.filter(({ revokedAt }) => revokedAt !== undefined))
  /** Server time when the devices were asked for. */
  askedAt = $state(0)
  readonly doubt = $derived.by(() => this.#of().clock.doubt)

  row(device: Device): Row {
    return deviceRow(device, { ...portParts(this.#of()), askedAt: this.askedAt })
  }

  async load(): Promise<void> {
    const reply = await askDevices()
    if ('ok' in reply) {
      this.devices = reply.ok.devices
      this.askedAt = reply.ok.nowMs
    } else this.problem = reply.failed.sentence
  }

  async changeRole(device: string, role: Role): Promise<void> {
    await this.#change(changeDevice(device, { role }))
  }

  /** The captain lets a crew device take the wall of this meeting, or no longer. */
  async letTakeWall(device: string, may: boolean): Promise<void> {
    await this.#change(changeDevice(device, { mayTakeWallIn: may ? this.#of().id : null }))
  }

  async takeOut(device: string): Promise<void> {
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
