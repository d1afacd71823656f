/**
 * Random meetings worked out: what is said of them stands. `npm run fuzz -- rotations` tries many more.
 *
 * R1  A plan breaks no rule by the checks that judge every plan, and is worth what the solver says it is.
 * R2  What is said to collide does, and without what is to be given up there is a plan that keeps the rest.
 * R3  Where every rotation can be tried, none is better, and there is none where there is said to be none.
 * R4  What goes to the screen is offered, explained or refused in sentences, and never our own fault.
 */
import { workLineSchema } from '@pitlamp/contract'
import fc from 'fast-check'
import loadHighs from 'highs'
import { expect, test } from 'vitest'
import { meantOf, saidOf } from '../../server/src/work/testing/meant.ts'
import { meetings, SIZES } from './meeting.ts'
import { run } from './run.ts'

const seed = Number(process.env['FC_SEED'] ?? 1)
const solver = await loadHighs()
/** A meeting that takes longer is stopped, and judged as far as it came; the long run waits for it. */
const SEARCH_SECONDS = 5
const TIME_MS = 240_000

test.each([
  { size: '4 × 3' as const, count: 40 },
  { size: '12 × 4' as const, count: 50 },
  { size: '24 × 6' as const, count: 2 },
])('R1, R2, R3: $count meetings of $size', { timeout: TIME_MS }, ({ size, count }) => {
  const { judged, failures } = run({ size, count, seed, solver, limitSeconds: SEARCH_SECONDS })
  const of = (kind: string) => judged.filter(({ said }) => said === kind).length
  const counts = { worked: of('worked'), impossible: of('impossible'), faulty: of('faulty') }
  console.log(`seed ${String(seed)}, ${size}: ${JSON.stringify(counts)}`)
  expect(failures).toEqual([])
  if (count < 10) return
  expect(Math.min(counts.worked, counts.impossible)).toBeGreaterThan(count / 6)
  const tried = judged.filter(({ isTried }) => isTried).length
  if (size === '4 × 3') expect(tried).toBeGreaterThan(count / 4)
})

test('R4: what is said to the screen', async () => {
  const property = fc.asyncProperty(meetings(SIZES['12 × 4']), async ({ given, asked }) => {
    const lines = await saidOf(meantOf(given), asked)
    expect(lines).toHaveLength(1)
    const [line] = lines.map((one) => workLineSchema.parse(one))
    if (line?.kind === 'impossible') {
      expect(line.giveUp.length + line.people.length).toBeGreaterThan(0)
    } else if (line?.kind === 'notDone') {
      expect(line.why).toBe('faulty')
      expect(line.sentences.length).toBeGreaterThan(0)
    } else expect(line?.kind).toBe('worked')
  })
  await fc.assert(property, { numRuns: 20 })
})
