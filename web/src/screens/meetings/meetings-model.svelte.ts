/** The team's meetings by how they stand; making one; opening the demo. */
import type { DemoOf, Me, Meeting as Info } from '@pitlamp/contract'
import { may } from '@pitlamp/race'
import { v7 } from 'uuid'
import type { Failure } from '../../api/ask.ts'
import { askMe } from '../../api/meeting.ts'
import { askMeetings, makeMeeting, openDemo } from '../../api/team.ts'
import { Memory } from '../../meeting/memory.ts'
import { peek } from '../../meeting/peek.ts'
import { router } from '../../router.ts'
import { pathTo } from '../../routes.ts'
import { carryOver, nextName } from './carry-over.ts'
import { firstScreen, standingOf, type Group, type Standing } from './standing.ts'

export interface Listed {
  readonly info: Info
  readonly standing: Standing
  readonly path: string
}

/** Reading a whole log to say how a meeting stands is worth it for the latest few. */
const LOOKED_INTO = 12

export class MeetingsModel {
  me = $state.raw<Me>()
  loaded = $state(false)
  /** Listed from this device's store: the server does not answer. */
  offline = $state(false)
  problem = $state<string>()
  busy = $state(false)
  #infos = $state.raw<readonly Info[]>([])
  #standings = $state.raw<Readonly<Record<string, Standing>>>({})
  #memory: Memory | undefined

  readonly groups = $derived.by(() =>
    (['running', 'next', 'done'] as const).map((group) => ({ group, listed: this.#listed(group) })),
  )
  readonly empty = $derived(this.loaded && this.#infos.length === 0)
  readonly mayMake = $derived(this.#may('makeMeeting'))
  readonly mayDemo = $derived(this.#may('openDemo'))

  constructor() {
    void this.load()
  }

  async load(): Promise<void> {
    this.#memory = await Memory.open()
    const me = await askMe()
    if ('failed' in me && isNotIn(me.failed)) {
      router.go('/join', 'replace')
      return
    }
    this.me = 'ok' in me ? me.ok : await this.#memory.me()
    if ('ok' in me) await this.#memory.rememberMe(me.ok)
    const reply = await askMeetings()
    this.offline = 'failed' in reply
    this.#infos = newestFirst('ok' in reply ? reply.ok.meetings : await this.#memory.meetings())
    this.loaded = true
    await this.#lookInto()
  }

  async make(name: string): Promise<void> {
    const made = await this.#ask(() => makeMeeting({ id: v7(), name }))
    if (made) router.go(pathTo(made.id, 'rules'))
  }

  /** Crew, rules and car file of one meeting for a new one, which opens at its rules. */
  async makeFrom(from: Info): Promise<void> {
    const taken = this.#infos.map(({ name }) => name)
    const name = nextName(from.name, taken)
    const made = await this.#ask(() => carryOver({ from, id: v7(), name }))
    if (made) router.go(pathTo(made.id, 'rules'))
  }

  async openDemo(of: DemoOf): Promise<void> {
    const demo = await this.#ask(() => openDemo({ of }))
    if (demo) router.go(pathTo(demo.id, 'wall'))
  }

  async #ask<T>(request: () => Promise<{ ok: T } | { failed: Failure }>): Promise<T | undefined> {
    if (this.busy) return undefined
    this.busy = true
    this.problem = undefined
    const reply = await request()
    this.busy = false
    if ('ok' in reply) return reply.ok
    this.problem = reply.failed.sentence
    return undefined
  }

  async #lookInto(): Promise<void> {
    const { me } = this
    if (!this.#memory || !me) return
    for (const info of this.#infos.slice(0, LOOKED_INTO)) {
      await this.#memory.rememberMeeting(info)
      if (info.lastSeq === 0) continue
      const standing = standingOf(await peek(this.#memory, info, me.device.id))
      this.#standings = { ...this.#standings, [info.id]: standing }
    }
  }

  #listed(group: Group): readonly Listed[] {
    return this.#infos
      .map((info) => ({ info, standing: this.#standings[info.id] ?? unknown(info) }))
      .filter(({ standing }) => standing.group === group)
      .map(({ info, standing }) => {
        const screen = firstScreen(this.me?.device.role ?? 'viewer', group)
        return { info, standing, path: pathTo(info.id, screen) }
      })
  }

  #may(what: 'makeMeeting' | 'openDemo'): boolean {
    return this.me !== undefined && may(this.me.device.role, { do: what })
  }
}

function isNotIn({ refusal }: Failure): boolean {
  return refusal === 'notJoined' || refusal === 'revoked'
}

function newestFirst(infos: readonly Info[]): readonly Info[] {
  return [...infos].sort((a, b) => b.createdAt - a.createdAt)
}

/** Until its log was looked into: nothing recorded is not begun, and an old one is taken as done. */
function unknown({ lastSeq }: Info): Standing {
  return lastSeq === 0
    ? { group: 'next', words: 'nothing recorded yet' }
    : { group: 'done', words: '' }
}
