import { describe, expect, it } from 'vitest'
import {
  answer,
  connectedScreen,
  fetchedAfter,
  inLog,
  note,
  page,
  phone,
  play,
  pushOf,
  saved,
  screen,
  sent,
} from './entries.fixture.ts'
import { savedState, view } from './view.ts'

const theirs = (n: number) => note(n, { device: phone })
/** Theirs, ours, theirs, ours. */
const last = inLog(4, note(2))
const log = [inLog(1, theirs(1)), inLog(2, note(1)), inLog(3, theirs(2)), last]
const connecting = play(screen({ confirmed: log }), { what: 'connected', last: 4 })

describe('connecting', () => {
  it('S18: asks for the last confirmed entry again, to see that it is the same log', () => {
    expect(connecting.effects).toEqual([{ do: 'fetch', request: 1, after: 3 }])
    const same = play(connecting.state, page(1, 4, last))
    expect(same.effects).toEqual([])
    expect(same.state.confirmed).toEqual(log)
  })

  it('S18: takes no push before it has seen that, and fetches what the push brought', () => {
    const early = play(connecting.state, pushOf(4, inLog(5, theirs(3))))
    expect(early.state.confirmed).toEqual(log)
    const { state, effects } = play(early.state, page(1, 4, last))
    expect(state.confirmed).toEqual(log)
    expect(fetchedAfter(effects)).toEqual([3])
  })

  it('S18: takes pushes as they come from then on', () => {
    const { state } = play(connecting.state, page(1, 4, last))
    const { effects } = play(state, pushOf(4, inLog(5, theirs(3))))
    expect(effects).toEqual([{ do: 'keep', confirmed: [inLog(5, theirs(3))] }])
  })

  it('S18: takes no harm from a welcome that is older than what this screen has', () => {
    const { state } = play(
      screen({ confirmed: log }),
      { what: 'connected', last: 2 },
      page(1, 4, last),
    )
    expect(state.confirmed).toEqual(log)
  })
})

describe('a server put back from an older copy', () => {
  const cut = play(connecting.state, page(1, 2))

  it('S18: has a shorter log: own entries beyond it are sent again, those of others set aside in view', () => {
    expect(cut.effects).toEqual([
      {
        do: 'keep',
        cutAfter: 2,
        pending: [{ entry: note(2) }],
        setAside: [{ entry: theirs(2), why: 'notInServersLog' }],
      },
      { do: 'fetch', request: 2, after: 1 },
      { do: 'append', batch: 3, entries: [note(2)] },
    ])
    expect(view(cut.state)).toEqual([log[0], log[1], note(2), theirs(2)])
    expect(savedState(cut.state, theirs(2).id)).toBe('keptOnThisDevice')
  })

  it('S18: settles what was set aside once its own device has sent it again', () => {
    const same = play(cut.state, page(2, 2, inLog(2, note(1))))
    const { state, effects } = play(same.state, pushOf(2, inLog(3, theirs(2))))
    expect(state.setAside).toEqual([])
    const confirmed = [inLog(3, theirs(2))]
    expect(effects).toEqual([{ do: 'keep', confirmed, settled: [theirs(2).id] }])
  })

  it('S18: and grown past this screen meanwhile is found out by the last entry, and fetched whole', () => {
    const grown = [inLog(4, theirs(7)), inLog(5, theirs(8))]
    const { state, effects } = play(connecting.state, page(1, 5, ...grown))
    expect(state.confirmed).toEqual([])
    expect(fetchedAfter(effects)).toEqual([0])
    expect(sent(effects)).toEqual([[1, 2]])
    const ids = (entries: readonly { id: string }[]) => entries.map(({ id }) => id).sort()
    expect(ids(view(state))).toEqual(ids(log))
  })

  it('S18: that gave an entry its old number by chance is found out by when it was recorded', () => {
    const { state } = play(connecting.state, page(1, 4, { ...last, recordedAt: 3_000_000 }))
    expect(state.confirmed).toEqual([])
  })

  it('S18: and empty has everything sent again by whoever made it', () => {
    const { state, effects } = play(connecting.state, page(1, 0))
    expect(sent(effects)).toEqual([[1, 2]])
    expect(state.setAside.map(({ entry }) => entry.n)).toEqual([1, 2])
  })
})

describe('an entry of this device', () => {
  it('S18: answered for with a number that another entry has here shows that the log is another', () => {
    const press = { what: 'pressed', entry: note(3) } as const
    const { state } = play(connectedScreen(log), press, answer(1, saved(3, note(3))))
    expect(state.confirmed).toEqual([])
    expect(state.pending).toEqual([{ entry: note(1) }, { entry: note(2) }, { entry: note(3) }])
  })

  it('S18: answered for but not in the server’s log any more is sent again', () => {
    const pending = [{ entry: note(3), recorded: inLog(6, note(3)) }]
    const start = screen({ confirmed: log, pending })
    const { state, effects } = play(start, { what: 'connected', last: 5 }, page(1, 5, last))
    expect(sent(effects)).toEqual([[3]])
    expect(effects).toContainEqual({
      do: 'keep',
      cutAfter: 5,
      pending: [{ entry: note(3) }],
      setAside: [],
    })
    expect(savedState(state, note(3).id)).toBe('keptOnThisDevice')
  })

  it('S18: answered for while an older page was on its way is not sent again', () => {
    const { state, effects } = play(
      connecting.state,
      { what: 'pressed', entry: note(3) },
      answer(2, saved(5, note(3))),
      page(1, 4, last),
    )
    expect(sent(effects)).toEqual([[3]])
    expect(savedState(state, note(3).id)).toBe('saved')
  })

  it('S18: answered for with a number that the log then gives to another is sent again', () => {
    const pending = [{ entry: note(3), recorded: inLog(5, note(3)) }]
    const { state } = play({ ...connectedScreen(log), pending }, pushOf(4, inLog(5, theirs(9))))
    expect(state.pending).toContainEqual({ entry: note(3) })
  })
})
