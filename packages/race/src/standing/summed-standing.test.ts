import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import { classify } from '../testing/classified.ts'
import { greenOf, laneMeeting, runSegments } from '../testing/lane-meeting.ts'
import { MINUTE } from '../testing/small-meeting.ts'
import { summedStanding } from './summed-standing.ts'

const NOW = greenOf(9)
const entered = (number: number) => greenOf(number) + 21 * MINUTE
const added: Rule = {
  id: 'scoring',
  kind: 'scoring',
  value: { by: 'lapsAndSections', sections: 'added' },
}

/** Two segments of a track with fifty sections. */
function two(also: readonly Rule[] = [added]) {
  const pressing = laneMeeting({ also, segments: 3 })
  runSegments(pressing, 1, 2)
  classify(pressing, entered(1), { segment: 's1', rows: ['Wren 12.40', 'Us 11.35', 'Moth 9.00'] })
  classify(pressing, entered(2), { segment: 's2', rows: ['Us 12.30', 'Moth 10.10', 'Wren 10.00'] })
  return pressing
}

test('where the rules make the result of segments we stand where their sum is', () => {
  // Us 11.35 + 12.30 = 23.65 = 24.15; Wren 12.40 + 10.00 = 22.40; Moth 9.00 + 10.10 = 19.10.
  expect(summedStanding(two().state(), NOW)).toMatchObject({
    ...{ by: 'distance', ours: { place: 1, distance: { laps: 24, sections: 15 } } },
    // 24.15 − 22.40 = 1.25.
    behind: { place: 2, gap: { laps: 1, sections: 25 } },
  })
})

test('a race penalty in laps comes off the sum once', () => {
  const pressing = two()
  pressing.press(entered(2) + MINUTE, 'penalty.1', { what: 'laps', laps: 3, scope: 'race' })
  // 24.15 − 3 = 21.15: behind the 22.40 of Wren by 1.25, before the 19.10 of Moth by 2.05.
  expect(summedStanding(pressing.state(), NOW)).toMatchObject({
    ours: { place: 2, distance: { laps: 21, sections: 15 } },
    ahead: { place: 1, gap: { laps: 1, sections: 25 } },
    behind: { place: 3, gap: { laps: 2, sections: 5 } },
  })
  classify(pressing, entered(2) + 2 * MINUTE, { segment: 's2', rows: ['Moth 10.10', 'Us 9.30'] })
  // Entered again after it the three are in the nine: 11.35 + 9.30 = 21.15.
  expect(summedStanding(pressing.state(), NOW)?.ours.distance).toEqual({ laps: 21, sections: 15 })
})

test('without a rule of what the result is made of, and after one of the whole race, there is none', () => {
  expect(summedStanding(two([]).state(), NOW)).toBeUndefined()
  const pressing = two()
  classify(pressing, entered(2) + MINUTE, { scope: 'whole', rows: ['Us 24.15', 'Wren 22.40'] })
  expect(summedStanding(pressing.state(), NOW)).toBeUndefined()
})
