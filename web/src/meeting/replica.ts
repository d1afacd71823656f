/**
 * This screen's copy of the log at work: it hands what happens to the machine of `@pitlamp/sync` and does
 * what the machine asks for. It decides nothing itself.
 */
import { step, type Effect, type SyncEvent, type SyncState } from '@pitlamp/sync'
import { askEntriesAfter } from '../api/meeting.ts'
import type { Line } from './line.svelte.ts'
import type { Outbox } from './outbox.ts'

interface Surroundings {
  readonly outbox: Outbox
  readonly line: Pick<Line, 'append'>
  readonly changed: (state: SyncState) => void
  /** The device did not take what should have been kept. */
  readonly notKept: () => void
}

export class Replica {
  #state: SyncState
  readonly #around: Surroundings

  constructor(state: SyncState, around: Surroundings) {
    this.#state = state
    this.#around = around
  }

  take(event: SyncEvent): void {
    const { state, effects } = step(this.#state, event)
    if (state !== this.#state) {
      this.#state = state
      this.#around.changed(state)
    }
    for (const effect of effects) void this.#do(effect)
  }

  async #do(effect: Effect): Promise<void> {
    switch (effect.do) {
      case 'keep':
        await this.#around.outbox.keep(effect).catch(this.#around.notKept)
        break
      case 'append':
        this.take(await this.#append(effect))
        break
      case 'fetch':
        this.take(await this.#fetch(effect))
        break
      case 'wait':
        setTimeout(() => this.take({ what: 'waited', before: effect.before }), effect.forMs)
    }
  }

  async #append({ batch, entries }: Extract<Effect, { do: 'append' }>): Promise<SyncEvent> {
    const answer = await this.#around.line.append(entries)
    if (answer === undefined) return { what: 'appendFailed', batch }
    return 'ok' in answer
      ? { what: 'appended', batch, appended: answer.ok }
      : { what: 'appendFailed', batch, problem: answer.problem }
  }

  async #fetch({ request, after }: Extract<Effect, { do: 'fetch' }>): Promise<SyncEvent> {
    const page = await askEntriesAfter(this.#state.meeting, after)
    return 'ok' in page
      ? { what: 'fetched', request, page: page.ok }
      : { what: 'fetchFailed', request }
  }
}
