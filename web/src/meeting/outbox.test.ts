import { expect, it } from 'vitest'
import { Outbox, type Press } from './outbox.ts'

const device = '018f3a50-6a00-7000-8000-0000000000d1'
const press = (id: string, at: number, epoch = 1): Press => ({
  v: 1,
  id: `018f3a50-6a00-7000-8000-0000000000${id}`,
  device,
  at,
  atBoundMs: 3,
  epoch,
  kind: 'trackCall.1',
  body: '{}',
})
/** A browser that keeps nothing. */
const without = () => new Outbox({ meeting: 'm', device, store: undefined })

it('numbers presses though nothing can be kept, and says that it was not', async () => {
  const outbox = without()
  expect(await outbox.record(press('01', 5_000))).toMatchObject({
    entry: { n: 1, at: 5_000 },
    notKept: 'unavailable',
  })
  expect(await outbox.record(press('02', 6_000))).toMatchObject({ entry: { n: 2, at: 6_000 } })
})

it('never gives a time below its last, as long as the server’s clock is read the same way', async () => {
  const outbox = without()
  await outbox.record(press('01', 9_000))
  expect(await outbox.record(press('02', 8_200))).toMatchObject({ entry: { n: 2, at: 9_000 } })
})

it('goes by the new reading once the captain has set the server’s clock back', async () => {
  const outbox = without()
  await outbox.record(press('01', 3_609_000, 1))
  expect(await outbox.record(press('02', 9_500, 2))).toMatchObject({ entry: { n: 2, at: 9_500 } })
})

it('counts on from its own entries in the log where its storage was emptied', async () => {
  const outbox = without()
  const recorded = {
    ...press('01', 7_000),
    n: 12,
    seq: 1,
    recordedAt: 7_000,
    role: 'pitWall',
  } as const
  await outbox.keep({ do: 'keep', confirmed: [recorded] })
  expect(await outbox.record(press('02', 7_500))).toMatchObject({ entry: { n: 13, at: 7_500 } })
})
