import { expect, test } from 'vitest'
import { fold } from '../fold/fold.ts'
import { readEntry } from '../entry/read.ts'
import { DEVICES, id } from '../testing/ids.ts'
import { GREEN, Pressing, problemKinds } from '../testing/pressing.ts'
import { compareEntries } from './order.ts'

test('L1: entries that count at one instant stand by device, then by number', () => {
  const pressing = new Pressing()
  const words = (text: string) => ({ words: text })
  pressing.by({ device: DEVICES.phone }).press(GREEN, 'note.1', words('third'))
  pressing.by({ device: DEVICES.wall }).press(GREEN, 'note.1', words('first'))
  pressing.by({ device: DEVICES.wall }).press(GREEN, 'note.1', words('second'))
  const { notes } = pressing.state().record
  expect(notes.map((said) => said.body.words)).toEqual(['first', 'second', 'third'])
})

test('L1: the number decides, not the id', () => {
  const pressing = new Pressing()
  for (const words of ['numbered 2', 'numbered 1']) pressing.press(GREEN, 'note.1', { words })
  const swapped = pressing.entries.map((entry) => ({ ...entry, n: 3 - entry.n }))
  const { notes } = fold(swapped).record
  expect(notes.map((said) => said.body.words)).toEqual(['numbered 1', 'numbered 2'])
})

test('L1: the order of entries is the one the fold reads them in', () => {
  const pressing = new Pressing()
  for (const step of [3, 1, 2]) pressing.press(GREEN + step, 'note.1', { words: `${step}` })
  const sorted = [...pressing.entries].sort(compareEntries)
  expect(sorted.map((entry) => entry.id)).toEqual([id(2), id(3), id(1)])
  expect(pressing.state().record.log.map((line) => line.entry.id)).toEqual([id(2), id(3), id(1)])
})

test('L1: a log that arrives backwards is read forwards', () => {
  const pressing = new Pressing()
  for (let step = 0; step < 200; step += 1) pressing.press(GREEN + step, 'trackCall.1', {})
  expect(fold([...pressing.entries].reverse())).toEqual(fold(pressing.entries))
})

test('L2: an entry from a clock that is ahead counts when the server took it', () => {
  const pressing = new Pressing()
  pressing.by({ recordedAt: GREEN }).press(GREEN + 90_000, 'note.1', { words: 'Ahead' })
  pressing.by({ recordedAt: GREEN }).press(GREEN - 90_000, 'note.1', { words: 'Behind' })
  const { log } = pressing.state().record
  expect(log.map((line) => line.at)).toEqual([GREEN - 90_000, GREEN])
})

test('L3: of a kept and a recorded copy the recorded one counts', () => {
  const pressing = new Pressing()
  pressing.by({ recordedAt: GREEN + 1_000 }).press(GREEN + 9_000, 'note.1', { words: 'Once' })
  const [recorded] = pressing.recorded
  if (!recorded) throw new Error('Nothing was pressed.')
  const { seq: _seq, recordedAt: _recordedAt, role: _role, ...kept } = recorded
  for (const both of [
    [recorded, kept],
    [kept, recorded],
  ]) {
    const state = fold(both.map(readEntry))
    expect(state.record.notes).toMatchObject([{ at: GREEN + 1_000 }])
    expect(state.record.log).toHaveLength(1)
  }
})

test('L4: what cannot be read is listed with its entries and kept in the log', () => {
  const pressing = new Pressing()
  const broken = pressing.pressAnything(GREEN, 'note.1', { wrds: 'Slip of the pen' })
  const later = pressing.pressAnything(GREEN, 'wingBent.1', {})
  const state = pressing.state()
  expect(state.problems.map(({ kind, entries }) => [kind, ...entries])).toEqual([
    ['unread', broken],
    ['unread', later],
  ])
  expect(state.record.log.map((line) => line.standing)).toEqual(['unread', 'unread'])
})

test('L7: missing numbers are counted below recorded entries only', () => {
  const pressing = new Pressing()
  for (const words of ['1', '2', '3', '4', '5']) pressing.press(GREEN, 'note.1', { words })
  const [first, , , fourth, fifth] = pressing.recorded.map(readEntry)
  if (!first || !fourth || !fifth) throw new Error('Five notes were pressed.')
  const state = fold([first, fourth])
  expect(state.problems).toEqual([
    {
      kind: 'numbersMissing',
      entries: [fourth.id],
      sentence: '2 entries are still on the device that recorded what follows.',
    },
  ])
  // 4 and 5 are only kept on this screen: nothing is missing below 1.
  const kept = [fourth, fifth].map(({ seq: _seq, recordedAt: _at, ...entry }) => entry)
  expect(problemKinds(fold([first, ...kept]))).toEqual([])
})

test('L7: numbers that arrive out of order are not missing', () => {
  const pressing = new Pressing()
  for (const words of ['1', '2', '3']) pressing.press(GREEN, 'note.1', { words })
  expect(fold([...pressing.entries].reverse()).problems).toEqual([])
})

test('L8: a clock that is ahead or not sure is listed once a device, until the time is set', () => {
  const pressing = new Pressing()
  const ahead = { recordedAt: GREEN, atBoundMs: 400, device: DEVICES.phone }
  // 2,401 ms ahead of the server, 400 of them owned up to, 2,000 allowed: 1 ms too many.
  const first = pressing.by(ahead).press(GREEN + 2_401, 'note.1', { words: 'Ahead' })
  pressing
    .by({ ...ahead, device: DEVICES.wall })
    .press(GREEN + 2_400, 'note.1', { words: 'Just in time' })
  const unsure = { device: DEVICES.phone, atBoundMs: 501 }
  const second = pressing.by(unsure).press(GREEN + 5_000, 'note.1', { words: 'Not sure' })
  expect(pressing.state().problems).toEqual([
    {
      kind: 'timeInDoubt',
      entries: [first, second],
      sentence: 'The time of 2 entries is in doubt: the device’s clock was not sure.',
    },
  ])
  for (const target of [first, second]) {
    const change = { what: 'replace', at: GREEN } as const
    pressing.press(GREEN + 9_000, 'correction.1', { target, basedOn: target, change, reason: '' })
  }
  expect(pressing.state().problems).toEqual([])
})
