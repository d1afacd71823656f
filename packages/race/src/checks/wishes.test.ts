import { expect, test } from 'vitest'
import { MINUTE } from '../testing/small-meeting.ts'
import { crewOf, drive, GREEN_AT, marshal, timelineOf } from './testing/judging.ts'
import { wishesOf } from './wishes.ts'

const spans = [drive('Ana', 0, 20), marshal('Ana', 50, 55), drive('Ben', 20, 60)]

function wishes(restBlock: { atLeastMs: number; fromAt?: number; toAt?: number }) {
  const crew = crewOf({ spans })
  const people = crew.people.map((one) => (one.id === 'Ana' ? { ...one, restBlock } : one))
  return wishesOf({ people }, timelineOf({ spans }))
}

test('a wish for one long rest is fulfilled, just fulfilled, not fulfilled', () => {
  const margin = (least: number) => wishes({ atLeastMs: least * MINUTE }).map((one) => one.marginMs)
  // Ana is free from 20 to 50.
  expect(margin(25)).toEqual([5 * MINUTE])
  expect(margin(30)).toEqual([0])
  expect(margin(31)).toEqual([-MINUTE])
})

test('between two instants only what lies there counts, also before the race', () => {
  const within = (from: number, to: number) =>
    wishes({
      ...{ atLeastMs: 40 * MINUTE },
      ...{ fromAt: GREEN_AT + from * MINUTE, toAt: GREEN_AT + to * MINUTE },
    })
  expect(within(30, 60)[0]?.valueMs).toBe(20 * MINUTE)
  expect(within(-45, 60)[0]?.valueMs).toBe(45 * MINUTE)
  expect(within(30, 60)[0]?.sentence).toBe('Ana’s longest rest is 0:20, Ana wishes for 0:40.')
})

test('who wishes for nothing is not named', () => {
  expect(wishesOf(crewOf({ spans }), timelineOf({ spans }))).toEqual([])
})
