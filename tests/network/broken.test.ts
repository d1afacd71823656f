/** Machines with one rule of packages/sync/RULES.md taken out. A simulation that lets one of them pass shows nothing. */
import { describe, expect, it } from 'vitest'
import { step, type SyncEvent, type SyncState } from '@pitlamp/sync'
import { run } from './run.ts'
import type { Machine } from './screen.ts'

/** At most: the first schedule that catches one ends it. */
const SCHEDULES = 1_000
const SEED = 1

const broken: Readonly<Record<string, Machine>> = {
  'S1: takes the number it was answered as its cursor': (state, event) => {
    const { state: next, effects } = step(state, event)
    const saved = next.pending.flatMap(({ recorded }) => recorded ?? [])
    const pending = next.pending.filter(({ recorded }) => !recorded)
    return { state: { ...next, confirmed: [...next.confirmed, ...saved], pending }, effects }
  },
  'S2: does not fetch what a push, or its own number, shows to be missing': (state, event) => {
    if (event.what === 'waited' && event.before === 'missingSaved') return { state, effects: [] }
    const { state: next, effects } = step(state, event)
    const isGap = event.what === 'pushed' && next.heardOf > next.confirmed.length
    if (!isGap) return { state: next, effects }
    const heardOf = next.confirmed.length
    const { fetching } = state
    return {
      state: { ...next, heardOf, fetching },
      effects: effects.filter((one) => one.do !== 'fetch'),
    }
  },
  'S3: asks for one page only': (state, event) => {
    const { state: next, effects } = step(state, event)
    if (event.what !== 'fetched') return { state: next, effects }
    const heardOf = next.confirmed.length
    return {
      state: { ...next, heardOf, fetching: undefined },
      effects: effects.filter((one) => one.do !== 'fetch'),
    }
  },
  'S4: takes any answer for that of the batch on its way': (state, event) => {
    const { sending } = state
    if (event.what !== 'appended' || !sending) return step(state, event)
    const results = event.appended.results.map((result, place) => {
      return { ...result, id: sending.ids[place] ?? result.id } as typeof result
    })
    return step(state, { ...event, batch: sending.batch, appended: { results } })
  },
  'S5: sends while disconnected': (state, event) => {
    const isPress = event.what === 'pressed'
    const { state: next, effects } = step(isPress ? { ...state, connected: true } : state, event)
    return { state: { ...next, connected: isPress ? state.connected : next.connected }, effects }
  },
  'S8: forgets an entry as soon as it is answered for': (state, event) => {
    const { state: next, effects } = step(state, event)
    return {
      state: { ...next, pending: next.pending.filter(({ recorded }) => !recorded) },
      effects,
    }
  },
  'S9: leaves in the outbox what the log has': (state, event) => {
    const { state: next, effects } = step(state, event)
    const lost = state.pending.filter(({ entry }) =>
      next.confirmed.some(({ id }) => id === entry.id),
    )
    return { state: { ...next, pending: [...next.pending, ...lost] }, effects }
  },
  'S10: sends each entry once': (state, event) =>
    withPending(state, event, event.what === 'disconnected' ? notOnTheirWay(state) : state.pending),
  'S12: drops what was refused': (state, event) => {
    const { state: next, effects } = step(state, event)
    return { state: { ...next, setAside: [] }, effects }
  },
  'S18: does not compare its last entry on connecting': (state, event) => {
    const { state: next, effects } = step(state, event)
    if (event.what !== 'connected' || next.heardOf > next.confirmed.length)
      return { state: next, effects }
    const unasked = effects.filter((one) => one.do !== 'fetch')
    return { state: { ...next, unchecked: false, fetching: undefined }, effects: unasked }
  },
  'S18: takes pushes before it has compared its log': (state, event) => {
    const isPush = event.what === 'pushed'
    const { state: next, effects } = step(isPush ? { ...state, unchecked: false } : state, event)
    return { state: { ...next, unchecked: isPush ? state.unchecked : next.unchecked }, effects }
  },
  'S18: takes a shorter log for an old page': (state, event) => {
    const { fetching } = state
    return step(fetching ? { ...state, fetching: { ...fetching, given: 0 } } : state, event)
  },
  'S20: shows saved before it is': (state, event) => {
    const { state: next, effects } = step(state, event)
    const pending = next.pending.map((one) => {
      return {
        ...one,
        recorded: one.recorded ?? {
          ...one.entry,
          seq: 1_000,
          recordedAt: 0,
          role: 'crew' as const,
        },
      }
    })
    return { state: { ...next, pending }, effects }
  },
}

function withPending(state: SyncState, event: SyncEvent, pending: SyncState['pending']) {
  return step({ ...state, pending }, event)
}

function notOnTheirWay({ pending, sending }: SyncState): SyncState['pending'] {
  return pending.filter(({ entry }) => !sending?.ids.includes(entry.id))
}

describe('a machine that', () => {
  it.each(Object.entries(broken))(
    '%s is caught',
    async (_, machine) => {
      const { failure, played } = await run({ schedules: SCHEDULES, seed: SEED, machine })
      console.log(`caught in schedule ${String(played)}: ${failure?.law ?? 'not at all'}`)
      expect(failure).toBeDefined()
    },
    120_000,
  )
})
