/**
 * Power cuts. The disk keeps only what was synced (synced-only.c); the machine is cut off at a random
 * moment while four devices append as fast as they are acknowledged, and started on what is left.
 *
 * P1  Every acknowledged entry is there after a power cut, byte for byte and under its number.
 * P2  The log's numbers have no gap after a power cut, and nothing is in it twice, though what was
 *     under way is sent again.
 * P3  With `synchronous=NORMAL` acknowledged entries are lost: the disk of these tests does forget.
 */
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { seeds } from '../seeds.ts'
import { chainOfCuts } from './chain.ts'
import { compile } from './compile.ts'

const TIME_MS = 400_000
const compiled = compile(join(import.meta.dirname, 'synced-only.c'))

/** 50 in all. */
const chains = [17, 17, 16].map((cuts, index) => ({ cuts, seed: seeds[index] ?? 0 }))

describe('a power cut', () => {
  it.for(chains)(
    'P1, P2: keeps what was acknowledged, once and without gaps ($cuts cuts, seed $seed)',
    { timeout: TIME_MS },
    async ({ cuts, seed }, { skip }) => {
      if ('reason' in compiled) return skip(compiled.reason)
      const { acknowledged, ...found } = await chainOfCuts({
        cuts,
        seed,
        library: compiled.library,
      })
      console.log(
        `${cuts} power cuts, seed ${seed}: ${acknowledged} acknowledged, ${found.lost} lost`,
      )
      expect(found).toEqual({ lost: 0, gaps: 0, twice: 0, unsent: 0 })
      // Cut off under load, not while idle.
      expect(acknowledged).toBeGreaterThanOrEqual(cuts)
    },
  )

  it(
    'P3: loses what was acknowledged when the server does not sync it',
    { timeout: TIME_MS },
    async ({ skip }) => {
      if ('reason' in compiled) return skip(compiled.reason)
      const program = ['--import', 'tsx', join(import.meta.dirname, 'unsynced-server.ts')]
      const chain = { cuts: 3, seed: seeds[0] ?? 0, library: compiled.library, program }
      const { acknowledged, lost } = await chainOfCuts(chain)
      console.log(
        `3 power cuts with synchronous=NORMAL: ${acknowledged} acknowledged, ${lost} lost`,
      )
      expect(lost).toBeGreaterThan(0)
    },
  )
})
