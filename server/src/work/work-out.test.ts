import { expect, test } from 'vitest'
import { meantOf, MINUTE, saidOf } from './testing/meant.ts'

const four = ['Ana', 'Ben', 'Cem', 'Dua'].map((name, place) => ({
  name,
  paceMs: 9_000 + 100 * place,
}))

test('two hours among four people are half an hour each', async () => {
  const stops = [30, 60, 90].map((minute) => [1, minute] as const)
  const lines = await saidOf(
    meantOf({
      ...{ segments: [120], people: four, stops },
      rules: [{ id: 'equal', kind: 'equalShare', value: { of: 'time' } }],
    }),
  )
  const [worked] = lines
  expect(worked).toMatchObject({ kind: 'worked', proof: 'best' })
  if (worked?.kind !== 'worked') return
  const driving = worked.plan.spans.map(({ fromMs, toMs }) => [fromMs / MINUTE, toMs / MINUTE])
  expect(driving).toEqual([
    [0, 30],
    [30, 60],
    [60, 90],
    [90, 120],
  ])
  expect(new Set(worked.plan.spans.map(({ person }) => person)).size).toBe(4)
})
