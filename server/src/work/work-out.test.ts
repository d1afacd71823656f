import { expect, test } from 'vitest'
import { meantOf, MINUTE, personId, saidOf } from './testing/meant.ts'

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

test('a long rest that cannot be is named with what it collides with', async () => {
  // An hour off in one piece for both leaves one change, at half time.
  const long = { atLeastMs: 60 * MINUTE, marshalling: 'isRest' as const }
  const stops = [30, 60, 90].map((minute) => [1, minute] as const)
  const lines = await saidOf(
    meantOf({
      ...{ segments: [120], people: four.slice(0, 2), stops },
      rules: [
        { id: 'rest', kind: 'restBlock', value: long },
        { id: 'changes', kind: 'numberOfChanges', value: { of: 'changes', atLeast: 2 } },
        { id: 'stints', kind: 'stintsEach', value: { atMost: 3 } },
      ],
    }),
  )
  const [said] = lines
  expect(said).toMatchObject({ kind: 'impossible' })
  if (said?.kind !== 'impossible') return
  expect(said.giveUp).toHaveLength(1)
  expect(said.collide).toEqual([
    'Everybody has one rest of at least 1:00 without a break; marshalling is rest.',
    expect.stringContaining('changes'),
  ])
})

/** All that Ana does, and nothing else for her. */
const keptAna = {
  keptPeople: [personId(0)],
  spans: [
    {
      ...{ id: 'drive', person: personId(0), duty: 'controller' as const, segment: 's1' },
      ...{ fromMs: 60 * MINUTE, toMs: 90 * MINUTE },
    },
  ],
}

test('somebody who is kept does what they did and nothing else', async () => {
  const stops = [30, 60, 90].map((minute) => [1, minute] as const)
  const marshals = { count: 1, when: 'wholeRace' as const }
  const [worked] = await saidOf(
    meantOf({
      ...{ segments: [120], people: four, stops, ...keptAna },
      rules: [{ id: 'owed', kind: 'marshalsOwed', value: marshals }],
    }),
  )
  expect(worked).toMatchObject({ kind: 'worked' })
  if (worked?.kind !== 'worked') return
  const hers = worked.plan.spans.filter(({ person }) => person === personId(0))
  expect(hers).toEqual(keptAna.spans)
  expect(worked.plan.keptPeople).toEqual(keptAna.keptPeople)
})

test('somebody who is kept is named where that rules out any plan', async () => {
  // Each drives at least 40 min, and she is kept at 30.
  const rule = { atLeastMs: 40 * MINUTE }
  const stops = [30, 60, 90].map((minute) => [1, minute] as const)
  const [said] = await saidOf(
    meantOf({
      ...{ segments: [120], people: four.slice(0, 2), stops, ...keptAna },
      rules: [{ id: 'least', kind: 'drivingTime', value: rule }],
    }),
  )
  expect(said).toMatchObject({ kind: 'impossible' })
  if (said?.kind !== 'impossible') return
  expect(said.giveUp).toHaveLength(1)
  expect(said.collide).toContain('Ana drives from 1:00 to 1:30 of segment 1: you keep this.')
  expect(said.collide).toContain('Ana is off duty from 1:30 to 2:00 of segment 1: you keep this.')
})
