import { expect, test } from 'vitest'
import { laneChange } from '../clocks/lane-change.ts'
import { lightTest } from '../clocks/lights.ts'
import type { Rule } from '../rules/index.ts'
import { greenOf, laneMeeting, runSegments } from '../testing/lane-meeting.ts'
import { GREEN } from '../testing/pressing.ts'
import { MINUTE, SECOND } from '../testing/small-meeting.ts'
import { obligations } from './obligations.ts'

const dark: Rule = { id: 'dark', kind: 'darkSegments', value: { segments: ['s2'] } }
const ENDED = GREEN + 20 * MINUTE

function begun(lane = 1, rules: readonly Rule[] = [dark]) {
  const pressing = laneMeeting({ also: rules, segments: 3 })
  pressing.press(GREEN - 30 * SECOND, 'startDrawn.1', { lane })
  return pressing
}
const due = (pressing: ReturnType<typeof begun>, now: number) =>
  obligations(pressing.state(), now)
    .filter(({ kind }) => kind === 'lightTest')
    .map(({ id, dueAt, label }) => [id, dueAt, label])

test('lights are tried before a dark segment, due at its green', () => {
  const pressing = begun()
  expect(due(pressing, GREEN - 10 * SECOND)).toEqual([])
  pressing.press(GREEN, 'green.1', { segment: 's1' })
  const open = ['lightTest:s2', greenOf(2), 'Try the lights: Segment 2 is dark']
  expect(due(pressing, GREEN + MINUTE)).toEqual([open])
  // Tried while the segment before still runs: that is too early.
  pressing.press(GREEN + 2 * MINUTE, 'inspected.1', { what: 'Lights', inOrder: true })
  expect(due(pressing, GREEN + 3 * MINUTE)).toEqual([open])
  pressing.press(ENDED, 'segmentEnd.1', { segment: 's1' })
  pressing.press(ENDED + MINUTE, 'inspected.1', { what: 'lights', inOrder: false })
  expect(due(pressing, ENDED + MINUTE)).toEqual([
    ['lightTest:s2', greenOf(2), 'Lights not in order: Segment 2 is dark'],
  ])
  expect(laneChange(pressing.state(), ENDED + MINUTE)?.lights?.state).toBe('notInOrder')
  pressing.press(ENDED + 2 * MINUTE, 'inspected.1', { what: 'Lights', inOrder: true })
  expect(due(pressing, ENDED + 2 * MINUTE)).toEqual([])
  expect(laneChange(pressing.state(), ENDED + 2 * MINUTE)?.lights).toMatchObject({
    ...{ state: 'inOrder', darkness: { is: 'dark' } },
  })
})

test('not before a segment in the light, nor before one we sit out', () => {
  const light = runSegments(begun(1, []), 1, 1)
  expect(lightTest(light.state(), ENDED)).toBeUndefined()
  // From lane 5 the second is a sit-out.
  const out = runSegments(begun(5), 1, 1)
  expect(lightTest(out.state(), ENDED)).toBeUndefined()
})
