/** The code on show for one role: renewed before it runs out, as long as it is looked at. */
import type { Invite } from '@pitlamp/contract'
import type { Role } from '@pitlamp/race'
import { generate } from 'lean-qr'
import { toSvgPath } from 'lean-qr/extras/svg'
import { askInvite } from '../../api/team.ts'

const RENEW_EVERY_REAL_MS = 115_000
const TRY_AGAIN_REAL_MS = 5_000

export interface Picture {
  readonly path: string
  readonly size: number
}

export class Invitation {
  role = $state<Role>('pitWall')
  qr = $state.raw<Invite>()
  /** Read out instead of scanned: one device, ten minutes. */
  typed = $state.raw<Invite>()
  problem = $state<string>()
  /** Which of the server's addresses the picture leads to. */
  #address = $state(0)
  #timer: ReturnType<typeof setTimeout> | undefined
  #asked = 0

  readonly links = $derived(this.qr?.links ?? [])
  readonly link = $derived(this.links[this.#address] ?? this.links[0])
  readonly picture = $derived(this.link === undefined ? undefined : pictureOf(this.link))

  choose(role: Role): void {
    if (role === this.role) return
    this.role = role
    this.typed = undefined
    this.qr = undefined
    void this.renew()
  }

  /** The next address of this server, where a phone cannot reach the first. */
  show(link: string): void {
    this.#address = Math.max(0, this.links.indexOf(link))
  }

  async renew(): Promise<void> {
    clearTimeout(this.#timer)
    const asked = (this.#asked += 1)
    const reply = await askInvite({ role: this.role, as: 'qr' })
    if (asked !== this.#asked) return
    if ('ok' in reply) this.qr = reply.ok
    this.problem = 'failed' in reply ? reply.failed.sentence : undefined
    const again = 'ok' in reply ? RENEW_EVERY_REAL_MS : TRY_AGAIN_REAL_MS
    this.#timer = setTimeout(() => void this.renew(), again)
  }

  async askTyped(): Promise<void> {
    const reply = await askInvite({ role: this.role, as: 'typed' })
    if ('ok' in reply) this.typed = reply.ok
    this.problem = 'failed' in reply ? reply.failed.sentence : undefined
  }

  stop(): void {
    this.#asked += 1
    clearTimeout(this.#timer)
  }
}

function pictureOf(link: string): Picture {
  const code = generate(link)
  return { path: toSvgPath(code), size: code.size }
}
