import { writeCopy, type MeetingCopy } from '@pitlamp/contract'
import { expect, it } from 'vitest'
import { BringInModel } from './bring-in-model.svelte.ts'

const copy: MeetingCopy = {
  ...{ pitlampCopy: 1, writtenAt: 0, asOf: 0 },
  device: { id: '018f3a50-6a00-7000-8000-0000000000d1', name: 'Wall tablet', role: 'pitWall' },
  meeting: {
    ...{ id: '018f3a50-6a00-7000-8000-0000000000a1', name: 'Lantern Forty', fictional: false },
    ...{ createdAt: 0, lastSeq: 0 },
    clock: { anchorServerMs: 0, anchorMeetingMs: 0, rate: 1 },
  },
  ...{ devices: [], people: [], drafts: [], recorded: [], unsent: [] },
}
const file = (name: string, text: string, size = text.length) => ({
  ...{ name, size },
  text: () => Promise.resolve(text),
})
const good = file('wall.json', writeCopy(copy))

it('offers what was read of several files, one line a meeting', async () => {
  const model = new BringInModel(() => undefined)
  await model.choose([good, file('again.json', writeCopy(copy))])
  expect(model.problems).toEqual([])
  expect(model.found).toHaveLength(1)
  expect(model.found[0]).toMatch(/^Lantern Forty: 0 entries, as of /)
})

it('offers nothing where one of the files is none, and says which and why', async () => {
  const model = new BringInModel(() => undefined)
  await model.choose([good])
  await model.choose([good, file('plan.json', '{}'), file('half.json', '{"pit')])
  expect(model.found).toEqual([])
  expect(model.problems).toEqual([
    'plan.json: nothing was brought in. It is no copy of a meeting that a screen of Pitlamp wrote.',
    'half.json: nothing was brought in. It is broken: its end is missing, or it was changed. Write the copy again.',
  ])
})

it('does not read what is too long, and survives what cannot be read', async () => {
  const model = new BringInModel(() => undefined)
  const lost = { name: 'lost.json', size: 1, text: () => Promise.reject(new Error('gone')) }
  await model.choose([file('film.json', '', 1e9), lost])
  expect(model.problems).toEqual([
    'film.json: nothing was brought in. It is too long for a copy.',
    'lost.json: nothing was brought in. It is broken: its end is missing, or it was changed. Write the copy again.',
  ])
})
