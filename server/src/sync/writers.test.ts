import { expect, test } from 'vitest'
import type { News } from '../storage/port.ts'
import { Writers } from './writers.ts'

const news = (device: string) =>
  ({ meeting: 'm', from: 0, to: 1, entries: [{ device }] }) as unknown as News

test('the log is gone through once, and who writes afterwards is known from the news', async () => {
  let reads = 0
  let answer = (_devices: readonly string[]) => {}
  const writers = new Writers(() => {
    reads += 1
    return new Promise((resolve) => (answer = resolve))
  })
  const first = writers.of('m')
  writers.hear(news('wrote while it was read'))
  answer(['wrote before'])
  await first
  writers.hear(news('wrote later'))
  expect([...(await writers.of('m'))]).toEqual([
    'wrote before',
    'wrote while it was read',
    'wrote later',
  ])
  expect(reads).toBe(1)
})

test('a read that fails is tried again when somebody asks again', async () => {
  let reads = 0
  const writers = new Writers(() => {
    reads += 1
    return reads === 1 ? Promise.reject(new Error('no disk')) : Promise.resolve(['a'])
  })
  await expect(writers.of('m')).rejects.toThrow('no disk')
  expect([...(await writers.of('m'))]).toEqual(['a'])
})
