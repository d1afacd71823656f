/** Answers that random meetings found to be wrong, made small. */
import loadHighs from 'highs'
import { expect, it } from 'vitest'
import type { Rule } from '@pitlamp/race'
import { MINUTE, personId, type Given } from '../../server/src/work/testing/meant.ts'
import { judgementOf } from './judge.ts'

const solver = await loadHighs()

/** Forty minutes with one stop at half time. */
function judged(rule: Rule, of: Partial<Given> = {}) {
  const people = ['Ana', 'Ben'].map((name) => ({ name, paceMs: 10_000 }))
  const given = { segments: [40], people, stops: [[1, 20] as const], rules: [rule], ...of }
  return judgementOf({ given, asked: {} }, { solver, limitSeconds: 10, tryWhy: true })
}

it('a window that closes with the first green is not over before the race', () => {
  const windows = [0, 20].map((minute) => ({
    ...{ id: `w${minute}`, segment: 's1' },
    ...{ fromMs: minute * MINUTE, toMs: minute * MINUTE },
  }))
  const { said, wrong } = judged({ id: 'windows', kind: 'stopWindows', value: { windows } })
  expect({ said, wrong }).toEqual({ said: 'impossible', wrong: [] })
})

it('what is to be done at a stop is written down at one that was given', () => {
  const { said, wrong } = judged({
    id: 'task',
    kind: 'stopTask',
    value: { task: 'motor', times: 1 },
  })
  expect({ said, wrong }).toEqual({ said: 'worked', wrong: [] })
})

it('a line kept at a post stands where no rule asks for anybody', () => {
  const line = { person: personId(0), segment: 's1', fromMs: 0, toMs: 20 * MINUTE }
  const spans = [{ id: 'kept', duty: 'post', pinned: true, ...line } as const]
  const asks = (count: number) => ({
    ...judged({ id: 'owed', kind: 'marshalsOwed', value: { count, when: 'wholeRace' } }, { spans }),
  })
  expect(asks(0)).toMatchObject({ said: 'worked', wrong: [] })
  expect(asks(1)).toMatchObject({ said: 'worked', wrong: [] })
  // One drives, and two are not there.
  expect(asks(2)).toMatchObject({ said: 'impossible', wrong: [] })
})
