import { describe, expect, it } from 'vitest'
import {
  answer,
  connectedScreen,
  fetchedAfter,
  inLog,
  meeting,
  note,
  page,
  phone,
  play,
  pushOf,
  saved,
  screen,
  sent,
} from './entries.fixture.ts'
import { cursor } from './state.ts'

const theirs = (seq: number) => inLog(seq, note(seq, { device: phone }))
const [one, two, three, four] = [theirs(1), theirs(2), theirs(3), theirs(4)]
const seqs = (state: { confirmed: readonly { seq: number }[] }) =>
  state.confirmed.map(({ seq }) => seq)

describe('pushes', () => {
  it('S1: a push that follows on the log is taken and kept', () => {
    const { state, effects } = play(connectedScreen([one]), pushOf(1, two, three))
    expect(seqs(state)).toEqual([1, 2, 3])
    expect(effects).toEqual([{ do: 'keep', confirmed: [two, three] }])
  })

  it('S1: what is there already is skipped, what is new beside it is taken', () => {
    const { state, effects } = play(
      connectedScreen([one, two]),
      pushOf(0, one, two),
      pushOf(1, two, three),
    )
    expect(seqs(state)).toEqual([1, 2, 3])
    expect(effects).toEqual([{ do: 'keep', confirmed: [three] }])
  })

  it('S1: entries of a push count by their number, not by their place in it', () => {
    expect(seqs(play(connectedScreen(), pushOf(0, two, one)).state)).toEqual([1, 2])
  })

  it('S2: a push beyond the cursor is not taken, the gap is fetched', () => {
    const { state, effects } = play(connectedScreen([one]), pushOf(2, three))
    expect(seqs(state)).toEqual([1])
    expect(effects).toEqual([{ do: 'fetch', request: 1, after: 0 }])
  })

  it('S2: a push with a hole in it is taken up to the hole, the rest is fetched', () => {
    const event = pushOf(0, one, three, four)
    const { state, effects } = play(connectedScreen(), event)
    expect(seqs(state)).toEqual([1])
    expect(fetchedAfter(effects)).toEqual([0])
  })

  it('S2: a push of another meeting is ignored', () => {
    const other = { meeting: meeting.replace('1', '2'), from: 0, to: 1, entries: [one] }
    expect(play(connectedScreen(), { what: 'pushed', push: other })).toEqual({
      state: connectedScreen(),
      effects: [],
    })
  })
})

describe('pages', () => {
  it('S3: pages follow one another until everything heard of is there', () => {
    const first = play(screen(), { what: 'connected', last: 3 })
    expect(fetchedAfter(first.effects)).toEqual([0])
    const second = play(first.state, page(1, 3, one, two))
    expect(fetchedAfter(second.effects)).toEqual([1])
    const third = play(second.state, page(2, 3, two, three))
    expect(fetchedAfter(third.effects)).toEqual([])
    expect(seqs(third.state)).toEqual([1, 2, 3])
  })

  it('S3: only one page is on its way, however many gaps are heard of', () => {
    const { effects } = play(connectedScreen(), pushOf(1, two), pushOf(2, three), pushOf(3, four))
    expect(fetchedAfter(effects)).toEqual([0])
  })

  it('S3: a page that came out before the news of a push is followed by another at once', () => {
    const { state, effects } = play(
      connectedScreen(),
      pushOf(1, two),
      pushOf(3, four),
      page(1, 2, one, two),
    )
    expect(seqs(state)).toEqual([1, 2])
    expect(fetchedAfter(effects)).toEqual([0, 1])
  })

  it('S3: a failed page is asked for again after a pause', () => {
    const failed = play(connectedScreen(), pushOf(1, two), { what: 'fetchFailed', request: 1 })
    expect(failed.effects.at(-1)).toEqual({ do: 'wait', forMs: 1_000, before: 'fetching' })
    const again = play(failed.state, { what: 'waited', before: 'fetching' })
    expect(fetchedAfter(again.effects)).toEqual([0])
  })

  it('S3: a page that brings nothing though more is there leads to a pause, not to a storm', () => {
    const { effects } = play(connectedScreen(), pushOf(1, two), page(1, 2))
    expect(effects.at(-1)).toEqual({ do: 'wait', forMs: 1_000, before: 'fetching' })
    expect(fetchedAfter(effects)).toEqual([0])
  })
})

describe('pages that come late', () => {
  it('S4: the answer to an earlier request changes nothing', () => {
    const waiting = play(connectedScreen(), pushOf(1, two)).state
    expect(play(waiting, page(7, 2, one, two), { what: 'fetchFailed', request: 7 })).toEqual({
      state: waiting,
      effects: [],
    })
  })

  it('S4: a page that comes twice is taken once', () => {
    const once = play(connectedScreen(), pushOf(1, two), page(1, 2, one, two)).state
    expect(play(once, page(1, 2, one, two))).toEqual({ state: once, effects: [] })
  })

  it('S4: a page older than what pushes brought meanwhile is harmless', () => {
    const { state } = play(
      connectedScreen([one]),
      pushOf(3, four),
      pushOf(1, two, three, four),
      page(1, 2, two),
    )
    expect(seqs(state)).toEqual([1, 2, 3, 4])
  })
})

describe('while disconnected', () => {
  it('S5: presses, pushes and pages ask for nothing and move nothing', () => {
    const lost = play(connectedScreen(), pushOf(1, two), { what: 'disconnected' }).state
    const { state, effects } = play(
      lost,
      { what: 'pressed', entry: note(1) },
      pushOf(0, one),
      page(1, 2, one, two),
      { what: 'waited', before: 'fetching' },
      { what: 'waited', before: 'sending' },
      { what: 'waited', before: 'missingSaved' },
    )
    expect(effects).toEqual([])
    expect(cursor(state)).toBe(0)
  })

  it('S5: connecting sends and fetches at once, whatever was being waited for', () => {
    const paused = play(
      connectedScreen(),
      { what: 'pressed', entry: note(1) },
      { what: 'appendFailed', batch: 1 },
      pushOf(1, two),
      { what: 'fetchFailed', request: 2 },
      { what: 'disconnected' },
    ).state
    const { effects } = play(paused, { what: 'connected', last: 2 })
    expect(sent(effects)).toEqual([[1]])
    expect(fetchedAfter(effects)).toEqual([0])
  })
})

describe('a saved entry that does not arrive', () => {
  it('S8: is fetched a second after it was said to be saved', () => {
    const answered = play(
      connectedScreen([one]),
      { what: 'pressed', entry: note(1) },
      answer(1, saved(2, note(1))),
    )
    expect(fetchedAfter(answered.effects)).toEqual([])
    expect(answered.effects.at(-1)).toEqual({ do: 'wait', forMs: 1_000, before: 'missingSaved' })
    const { effects } = play(answered.state, { what: 'waited', before: 'missingSaved' })
    expect(fetchedAfter(effects)).toEqual([0])
  })

  it('S8: is not fetched when its push came in time', () => {
    const { effects } = play(
      connectedScreen([one]),
      { what: 'pressed', entry: note(1) },
      answer(1, saved(2, note(1))),
      pushOf(1, inLog(2, note(1))),
      { what: 'waited', before: 'missingSaved' },
    )
    expect(fetchedAfter(effects)).toEqual([])
  })
})

describe('entries of other devices', () => {
  it('S1: stand in the log beside one’s own', () => {
    const other = inLog(2, note(9, { device: phone }))
    expect(play(connectedScreen([one]), pushOf(1, other)).state.confirmed[1]).toEqual(other)
  })
})
