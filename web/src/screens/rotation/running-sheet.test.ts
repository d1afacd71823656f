import { CAPTAINS_DEFAULTS, emptyState, planTimeline, withDrafts, type Plan } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { lineCount, runningSheet } from './running-sheet.ts'

const MINUTE_MS = 60_000
const TEN = Date.UTC(2027, 0, 16, 10)
const ida = '019b0000-0000-7000-8000-000000000001'
const tom = '019b0000-0000-7000-8000-000000000002'
const crew = {
  people: [
    { id: ida, name: 'Ida', duties: [] },
    { id: tom, name: 'Tom', duties: [] },
  ],
}
const plan: Plan = {
  spans: [
    { id: 'a', person: ida, duty: 'controller', segment: 's1', fromMs: 0, toMs: 20 * MINUTE_MS },
    {
      ...{ id: 'b', person: tom, duty: 'controller', segment: 's1' },
      ...{ fromMs: 20 * MINUTE_MS, toMs: 40 * MINUTE_MS },
    },
    {
      ...{ id: 'm', person: tom, duty: 'post', segment: 's1', post: '3' },
      ...{ fromMs: 0, toMs: 20 * MINUTE_MS },
    },
  ],
  stops: [
    { id: 't', segment: 's1', atMs: 20 * MINUTE_MS, mandatory: true, task: 'rear tyres' },
    { id: 'u', segment: 's1', atMs: 30 * MINUTE_MS, mandatory: false },
  ],
  captain: CAPTAINS_DEFAULTS,
}
const rules = {
  ...{ name: 'Forty', timeZone: 'Europe/Dublin', rules: [] },
  programme: [
    {
      ...{ id: 's1', kind: 'segment' as const, plannedAt: TEN },
      length: { by: 'time' as const, lengthMs: 40 * MINUTE_MS },
    },
  ],
}
const sheet = runningSheet(planTimeline(withDrafts(emptyState, { rules, crew, plan }), 0), crew)

test('there is a line for every moment at which something changes', () => {
  expect(
    sheet[0]?.lines.map(({ at, driver, marshals, what }) => [
      (at - TEN) / MINUTE_MS,
      ...[driver, marshals, what],
    ]),
  ).toEqual([
    [0, 'Ida', 'Tom (3)', 'Green'],
    [20, 'Tom', '', 'Mandatory stop: rear tyres'],
    [30, 'Tom', '', 'Stop'],
    [40, '', '', 'Segment over'],
  ])
})

test('what goes on the page is counted, headings included', () => {
  expect(lineCount(sheet)).toBe(5)
})
