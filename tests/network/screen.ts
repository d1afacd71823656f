/** A screen: the machine of @pitlamp/sync, and around it what a browser would be. */
import type { Entry } from '@pitlamp/race'
import {
  initialSync,
  type Effect,
  type Pause,
  type SyncEvent,
  type SyncState,
  type step,
} from '@pitlamp/sync'
import { MEETING } from './names.ts'
import { Store } from './store.ts'

export type Machine = typeof step

/** How a screen reaches the server; answers come back as events, or never. */
export interface Lines {
  readonly hello: (screen: Screen) => void
  readonly append: (screen: Screen, effect: Extract<Effect, { do: 'append' }>) => void
  readonly fetch: (screen: Screen, effect: Extract<Effect, { do: 'fetch' }>) => void
}

export class Screen {
  readonly device: string
  state: SyncState
  /** Entries made here, by id: none may ever be lost. */
  readonly pressed = new Map<string, Entry>()
  /** Rises with every connection; what belongs to an older one no longer arrives. */
  connection = 0
  timers: Pause[] = []
  readonly #machine: Machine
  readonly #lines: Lines
  readonly #store: Store

  constructor(device: string, machine: Machine, lines: Lines) {
    this.device = device
    this.#machine = machine
    this.#lines = lines
    this.#store = new Store(device)
    this.state = initialSync(MEETING, this.#store.read())
  }

  press(make: (n: number) => Entry): void {
    const entry = this.#store.press(make)
    this.pressed.set(entry.id, entry)
    this.happen({ what: 'pressed', entry })
  }

  connect(): void {
    this.disconnect()
    this.#lines.hello(this)
  }

  disconnect(): void {
    this.connection += 1
    this.happen({ what: 'disconnected' })
  }

  reload(): void {
    this.connection += 1
    this.timers = []
    this.state = initialSync(MEETING, this.#store.read())
  }

  store(): void {
    this.#store.flush()
  }

  /** The first pause is over. */
  wait(): void {
    const before = this.timers.shift()
    if (before) this.happen({ what: 'waited', before })
  }

  /** Nothing was heard for too long. */
  giveUpWaiting(): void {
    const { sending, fetching } = this.state
    if (sending) this.happen({ what: 'appendFailed', batch: sending.batch })
    if (fetching) this.happen({ what: 'fetchFailed', request: fetching.request })
  }

  happen(event: SyncEvent): void {
    const { state, effects } = this.#machine(this.state, event)
    this.state = state
    for (const effect of effects) this.#perform(effect)
  }

  #perform(effect: Effect): void {
    switch (effect.do) {
      case 'keep': {
        this.#store.ask(effect)
        return
      }
      case 'wait':
        return void this.timers.push(effect.before)
      case 'append': {
        this.#lines.append(this, effect)
        return
      }
      case 'fetch': {
        this.#lines.fetch(this, effect)
        return
      }
    }
  }
}
