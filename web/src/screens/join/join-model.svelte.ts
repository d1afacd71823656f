/** A device joins a team with a code: out of a QR's link, or typed. */
import { askMeetings, join } from '../../api/team.ts'
import { Memory } from '../../meeting/memory.ts'
import { router } from '../../router.ts'
import { pathTo } from '../../routes.ts'
import { firstScreen } from '../meetings/standing.ts'

export class JoinModel {
  code = $state('')
  name = $state('')
  /** The code came with the link: nothing to type but the name. */
  readonly fromLink: boolean
  problem = $state<string>()
  busy = $state(false)

  constructor() {
    const linked = decodeURIComponent(location.hash.slice(1))
    this.fromLink = linked !== ''
    this.code = linked
    // A code that stays in the address bar is read over a shoulder, or kept in the history.
    if (this.fromLink) history.replaceState(null, '', location.pathname)
    void this.#recall()
  }

  async join(): Promise<void> {
    if (this.busy) return
    this.busy = true
    this.problem = undefined
    const memory = await Memory.open()
    const device = await memory.deviceId()
    const reply = await join({ code: this.code.trim(), device, name: this.name.trim() })
    this.busy = false
    if ('failed' in reply) {
      this.problem = reply.failed.sentence
      return
    }
    await memory.rememberMe(reply.ok)
    memory.askToStay()
    router.go(await whereTo(reply.ok.device.role), 'replace')
  }

  /** A device that joined before has a name already. */
  async #recall(): Promise<void> {
    const me = await (await Memory.open()).me()
    if (this.name === '' && me) this.name = me.device.name
  }
}

/** A replaced tablet is at its post with the second press: the one meeting there is opens by itself. */
async function whereTo(role: Parameters<typeof firstScreen>[0]): Promise<string> {
  const reply = await askMeetings()
  const [only, another] = 'ok' in reply ? reply.ok.meetings : []
  return only && !another ? pathTo(only.id, firstScreen(role, 'running')) : '/'
}
