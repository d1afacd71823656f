/** Plays a schedule on three screens and a server, heals the network, and holds the laws against what came out. */
import assert from 'node:assert/strict'
import { step, view } from '@pitlamp/sync'
import { checkConverged, checkNobodyElseMisses, checkSaved, checkScreen } from './laws.ts'
import { LogServer, type NewsOfLog } from './log-server.ts'
import { DEVICES, MEETING } from './names.ts'
import { Network } from './network.ts'
import { entryOf } from './presses.ts'
import type { Schedule, Turn } from './schedule.ts'
import { Screen, type Lines, type Machine } from './screen.ts'

/** Far more than either takes. */
const STEPS_TO_REST = 2_000
const MESSAGES_OF_A_CALM = 200

/** Rejects with the first law that does not hold. */
export async function play({ turns, endsWith }: Schedule, machine: Machine = step): Promise<void> {
  const simulation = new Simulation(machine)
  await simulation.open()
  try {
    for (const turn of turns) await simulation.turn(turn)
    await simulation.heal(endsWith)
  } finally {
    await simulation.close()
  }
}

class Simulation {
  readonly #server = new LogServer()
  readonly #network = new Network()
  readonly #screens: readonly Screen[]
  /** Screens that said hello to the server as it runs now, by connection, and who they are. */
  #sockets = new Map<Screen, number>()
  #onDisk = new Set<string>()
  #wasPutBack = false

  constructor(machine: Machine) {
    const lines: Lines = {
      hello: (screen) => this.#hello(screen),
      append: (screen, effect) => this.#append(screen, effect),
      fetch: (screen, effect) => this.#fetch(screen, effect),
    }
    this.#screens = DEVICES.map((device) => new Screen(device, machine, lines))
    this.#server.onNews = (news) => this.#push(news)
  }

  open(): Promise<void> {
    return this.#server.open()
  }

  close(): Promise<void> {
    return this.#server.close()
  }

  async turn(turn: Turn): Promise<void> {
    this.#server.nowMs += 1
    await this.#do(turn)
    for (const screen of this.#screens) {
      checkScreen(screen)
      if (!this.#wasPutBack) checkSaved(screen, this.#onDisk)
    }
  }

  async heal(endsWith: Schedule['endsWith']): Promise<void> {
    await this.turn({ do: 'diskWorks' })
    for (const screen of this.#screens) {
      if (endsWith === 'connecting' || !this.#isConnected(screen)) screen.connect()
    }
    await this.#rest()
    if (endsWith === 'aPress') await this.turn({ do: 'press', screen: 0, kind: 'note' })
    if (endsWith === 'putBack') {
      await this.turn({ do: 'putBack' })
      for (const screen of this.#screens) screen.connect()
    }
    await this.#rest()
    checkConverged(this.#screens, await this.#server.log())
    checkNobodyElseMisses(this.#screens)
  }

  /** Both ends know of it: a screen whose server has restarted notices in time, and connects anew. */
  #isConnected(screen: Screen): boolean {
    return screen.state.connected && this.#sockets.get(screen) === screen.connection
  }

  async #rest(): Promise<void> {
    for (let steps = 0; !this.#isAtRest(); steps += 1) {
      assert.ok(steps < STEPS_TO_REST, 'It does not come to rest.')
      if (!this.#network.isEmpty) await this.turn({ do: 'deliver', pick: 0 })
      else for (const screen of this.#screens) this.#moveOn(screen)
    }
  }

  /** What time does by itself: stores, ends pauses and waits, and somebody presses "send again". */
  #moveOn(screen: Screen): void {
    screen.store()
    screen.giveUpWaiting()
    for (const _ of [...screen.timers]) screen.wait()
    const again = screen.state.setAside.filter(({ why }) => why === 'keepsFailing')
    if (again.length > 0) {
      screen.happen({ what: 'retrySetAside', ids: again.map(({ entry }) => entry.id) })
    }
  }

  #isAtRest(): boolean {
    const isBusy = ({ state: { sending, fetching, setAside }, timers }: Screen) =>
      sending || fetching || timers.length > 0 || setAside.some(({ why }) => why === 'keepsFailing')
    return this.#network.isEmpty && !this.#screens.some(isBusy)
  }

  async #calm(): Promise<void> {
    for (let sent = 0; sent < MESSAGES_OF_A_CALM && !this.#network.isEmpty; sent += 1) {
      await this.#network.deliver(0)
    }
  }

  async #do(turn: Turn): Promise<void> {
    switch (turn.do) {
      case 'press': {
        this.#press(turn)
        return
      }
      case 'deliver':
        return this.#network.deliver(turn.pick)
      case 'lose': {
        this.#network.lose(turn.pick)
        return
      }
      case 'repeat':
        return this.#network.repeat(turn.pick)
      case 'role':
        return this.#server.giveRole(this.#screen(turn.screen).device, turn.role)
      case 'sendAgain': {
        this.#screen(turn.screen).happen({ what: 'retrySetAside' })
        return
      }
      case 'connect':
      case 'disconnect':
      case 'reload':
      case 'store':
      case 'wait':
      case 'giveUpWaiting': {
        this.#screen(turn.screen)[turn.do]()
        return
      }
      case 'diskFails':
      case 'diskWorks':
        this.#server.diskWorks = turn.do === 'diskWorks'
        return
      case 'calm':
        return this.#calm()
      case 'copy': {
        this.#server.copy()
        return
      }
      case 'restart':
      case 'putBack':
        return this.#restart(turn.do)
    }
  }

  async #restart(how: 'restart' | 'putBack'): Promise<void> {
    this.#sockets = new Map()
    await this.#server[how]()
    if (how === 'putBack') this.#wasPutBack = true
  }

  #press({ screen: index, kind }: Extract<Turn, { do: 'press' }>): void {
    const screen = this.#screen(index)
    const { device } = screen
    const target = view(screen.state).at(-1)?.id ?? MEETING
    screen.press((n) => entryOf({ device, n, at: this.#server.nowMs, kind, target }))
  }

  #screen(index: number): Screen {
    const screen = this.#screens[index]
    if (!screen) throw new Error('There are three screens.')
    return screen
  }

  /** Something for this screen that is worthless on another connection. */
  #toScreen(screen: Screen, what: string, arrive: () => void): void {
    const { connection } = screen
    this.#network.send({
      what,
      arrive: () => (screen.connection === connection ? arrive() : undefined),
    })
  }

  #hello(screen: Screen): void {
    const { connection } = screen
    const arrive = async () => {
      if (screen.connection !== connection) return
      this.#sockets.set(screen, connection)
      const last = await this.#server.last()
      this.#toScreen(screen, 'welcome', () => screen.happen({ what: 'connected', last }))
    }
    this.#network.send({ what: 'hello', arrive })
  }

  #push({ from, to, entries }: NewsOfLog): void {
    for (const { id } of entries) this.#onDisk.add(id)
    const push = { meeting: MEETING, from, to, entries: [...entries] }
    for (const [screen, connection] of this.#sockets) {
      if (screen.connection !== connection) continue
      this.#toScreen(screen, 'push', () => screen.happen({ what: 'pushed', push }))
    }
  }

  /** A socket the server no longer has says nothing; one the screen gave up may still be read from. */
  #append(screen: Screen, { batch, entries }: Parameters<Lines['append']>[1]): void {
    assert.ok(screen.state.connected, 'Something is sent while disconnected.')
    const { connection } = screen
    const arrive = async () => {
      if (this.#sockets.get(screen) !== connection) return
      const answer = await this.#server.append(screen.device, {
        meeting: MEETING,
        entries: [...entries],
      })
      this.#toScreen(screen, 'appended', () => {
        if ('ok' in answer) screen.happen({ what: 'appended', batch, appended: answer.ok })
        else screen.happen({ what: 'appendFailed', batch, problem: answer.problem })
      })
    }
    this.#network.send({ what: 'append', arrive })
  }

  /** Over HTTP: it knows no connection, and may be answered at any time after. */
  #fetch(screen: Screen, { request, after }: Parameters<Lines['fetch']>[1]): void {
    assert.ok(screen.state.connected, 'Something is fetched while disconnected.')
    const arrive = async () => {
      const page = await this.#server.page(after)
      const answer = () => screen.happen({ what: 'fetched', request, page })
      this.#network.send({ what: 'page', arrive: answer })
    }
    this.#network.send({ what: 'fetch', arrive })
  }
}
