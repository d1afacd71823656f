/** The screens that other processes over the same database serve. */
import { presenceSchema } from '@pitlamp/contract'
import type { Deps } from '../deps.ts'
import type { Neighbours } from '../storage/port.ts'
import type { Screen } from './presence.ts'

const screensSchema = presenceSchema.shape.screens

export class Elsewhere {
  readonly #neighbours: Neighbours
  readonly #deps: Pick<Deps, 'storage' | 'time'>

  constructor(neighbours: Neighbours, deps: Pick<Deps, 'storage' | 'time'>) {
    this.#neighbours = neighbours
    this.#deps = deps
  }

  async show(meeting: string, screens: readonly Screen[]): Promise<void> {
    const input = { meeting, screens: JSON.stringify(screens), ...this.#self() }
    await this.#deps.storage.run('keepScreens', input)
    this.#neighbours.say({ say: 'presence', meeting })
  }

  /** A device that went from one process to another counts where it was seen last. */
  async screensIn(meeting: string): Promise<readonly Screen[]> {
    const kept = await this.#deps.storage.read.screensElsewhere(meeting, this.#self())
    const screens = kept.flatMap((text) => screensSchema.safeParse(JSON.parse(text)).data ?? [])
    return [...new Map(screens.map((screen) => [screen.device, screen])).values()]
  }

  #self() {
    return { process: this.#neighbours.process, nowMs: this.#deps.time.now() }
  }
}
