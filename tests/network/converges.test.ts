/** Run once a seed, as every file with fast-check in it. */
import { readConfigureGlobal } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { run } from './run.ts'

/** Three seeds make 2,100. */
const SCHEDULES = 700
const seed = readConfigureGlobal().seed ?? 1

describe('three screens and a server', () => {
  it('come to one log with nothing lost and nothing twice, whatever the network does', async () => {
    const { played, failure } = await run({ schedules: SCHEDULES, seed, shrink: true })
    console.log(`${String(played)} schedules, seed ${String(seed)}`)
    expect(failure, failure?.report).toBeUndefined()
    expect(played).toBe(SCHEDULES)
  }, 300_000)
})
