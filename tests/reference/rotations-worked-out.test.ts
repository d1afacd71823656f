/**
 * Published sets planned: what is worked out keeps the published numbers, by the arithmetic beside them and by the
 * checks that judge every plan. Crews, paces and stops are invented.
 */
import type { WorkOut } from '@pitlamp/contract'
import {
  emptyState,
  judge,
  planTimeline,
  STARTING_POINTS,
  withDrafts,
  type Plan,
  type Rule,
} from '@pitlamp/race'
import { expect, test } from 'vitest'
import { meantOf, saidOf, type Given } from '../../server/src/work/testing/meant.ts'
import { HOUR, MINUTE, times } from './by-hand.ts'

const crew = (count: number) =>
  times(count, (place) => ({ name: `Driver ${place + 1}`, paceMs: 9_000 + 150 * place }))
const published = (id: string): readonly Rule[] =>
  STARTING_POINTS.find((point) => point.id === id)?.regulations.rules ?? []
const stopsEvery = (minutes: number, count: number) =>
  times(count, (place) => [1, (place + 1) * minutes] as const)

/** The plan worked out, after the checks have found nothing. */
async function planned(given: Given, asked: Partial<WorkOut> = {}): Promise<Plan> {
  const meant = meantOf(given)
  const [said] = await saidOf(meant, asked)
  if (said?.kind !== 'worked') throw new Error(`Not worked out: ${JSON.stringify(said)}`)
  const state = withDrafts(emptyState, { ...meant.drafts, plan: said.plan })
  const broken = judge(state, planTimeline(state, 0), 0).filter(
    ({ verdict }) => verdict === 'broken',
  )
  expect(broken.map(({ sentence }) => sentence)).toEqual([])
  return said.plan
}

/** Minutes at the controller, least first. */
function minutesEach({ spans }: Plan): readonly number[] {
  const minutes = new Map<string, number>()
  for (const { person, duty, fromMs, toMs } of spans) {
    if (duty !== 'controller') continue
    minutes.set(person, (minutes.get(person) ?? 0) + (toMs - fromMs) / MINUTE)
  }
  return [...minutes.values()].sort((a, b) => a - b)
}

const equalSegments: Rule = { id: 'equal', kind: 'equalShare', value: { of: 'segments' } }

// BSCRA, 2022 endurance rules, slotcarracing.org.uk/24hour/2022rules.html
test('S1: eight segments of 45 min among four are two each, 90 min', async () => {
  const segments = times(8, () => 45)
  const lanes = [1, 3, 5, 7, 8, 6, 4, 2]
  const rules = [...published('endurance-cup-2022'), equalSegments]
  const plan = await planned({ segments, lanes, rules, people: crew(4) })
  // 360 ÷ 4.
  expect(minutesEach(plan)).toEqual([90, 90, 90, 90])
})

// Il Cavallino Sanremo, 24 h rules, tuttoslot.it/cavallinosanremo/pres24gioco.htm
const sanremo = { segments: times(24, () => 55), rules: published('two-tracks-24-hours') }

test('S2: 24 segments of 55 min among six are four each, 220 min', async () => {
  const plan = await planned({
    ...sanremo,
    rules: [...sanremo.rules, equalSegments],
    people: crew(6),
  })
  // 24 × 55 = 1320; 1320 ÷ 6.
  expect(minutesEach(plan)).toEqual(times(6, () => 220))
})

test('S2: five who all drive cannot have the same number of whole segments', async () => {
  const all: Rule = { id: 'all', kind: 'numberOfDrivers', value: { atLeast: 5 } }
  const rules = [...sanremo.rules, equalSegments, all]
  const [said] = await saidOf(meantOf({ ...sanremo, rules, people: crew(5) }))
  if (said?.kind !== 'impossible') throw new Error(`It is ${said?.kind}.`)
  // 24 ÷ 5 is no whole number.
  expect(said.giveUp).toHaveLength(1)
  expect(said.collide).toEqual([
    'All drivers have the same number of segments.',
    'At least 5 drivers drive in the race.',
  ])
})

test('S2: with a stop in each segment five have 264 min each', async () => {
  const equal: Rule = { id: 'equal', kind: 'equalShare', value: { of: 'time' } }
  const stops = times(24, (place) => [place + 1, 44] as const)
  const plan = await planned({
    ...sanremo,
    stops,
    rules: [...sanremo.rules, equal],
    people: crew(5),
  })
  // 1320 ÷ 5 = 264 = 6 × 44.
  expect(minutesEach(plan)).toEqual(times(5, () => 264))
})

// Resistencia Tarragona 2016, rallyslotclubtarragona.blogspot.com
test('S4: six segments of 20 min in pairs are three each', async () => {
  const rules = published('pairs-series-2016')
  const plan = await planned({ segments: times(6, () => 20), rules, people: crew(2) })
  expect(minutesEach(plan)).toEqual([60, 60])
})

// Motorsport UK, National Competition Rules 2026, pages 365 and 401
test('F1: 24 h with three hours in any five, 60 % at most, six hours at a post', async () => {
  const rules: Rule[] = [
    { id: 'rolling', kind: 'rollingDriving', value: { atMostMs: 3 * HOUR, withinMs: 5 * HOUR } },
    { id: 'share', kind: 'drivingShare', value: { atMost: 600, longerThanMs: 6 * HOUR } },
    { id: 'owed', kind: 'marshalsOwed', value: { count: 1, when: 'wholeRace' } },
    { id: 'shift', kind: 'marshalShift', value: { atMostMs: 6 * HOUR } },
  ]
  const given = { segments: [1_440], rules, people: crew(4), stops: stopsEvery(60, 23) }
  const most = { balance: { toleranceMs: 0, lapsPerHour: 0 } }
  const minutes = minutesEach(await planned(given, most))
  // 60 % of 24 h is 14:24, 864 min; the slots are whole hours.
  expect(Math.max(...minutes)).toBeLessThanOrEqual(14 * 60)
  expect(minutes.reduce((sum, one) => sum + one, 0)).toBe(1_440)
})

// FIA WEC, "maximum driving time allowed", fiawec.com; local press 2024
test('F2: three drivers, four hours in any six, fourteen in all', async () => {
  const rules: Rule[] = [
    { id: 'rolling', kind: 'rollingDriving', value: { atMostMs: 4 * HOUR, withinMs: 6 * HOUR } },
    { id: 'most', kind: 'drivingTime', value: { atMostMs: 14 * HOUR } },
  ]
  const given = { segments: [1_440], rules, people: crew(3), stops: stopsEvery(60, 23) }
  const even = { balance: { toleranceMs: 0, lapsPerHour: 400 } }
  // 24 h ÷ 3.
  expect(minutesEach(await planned(given, even))).toEqual([480, 480, 480])
})

// Telethon 2004 rules, juridique.net
test('K1: ten drivers of 24 h, equal to 5 %, at least 60 stints', async () => {
  const rules: Rule[] = [
    { id: 'equal', kind: 'equalShare', value: { of: 'time', tolerance: 50 } },
    { id: 'drivers', kind: 'numberOfDrivers', value: { atLeast: 6, atMost: 10 } },
    { id: 'stints', kind: 'numberOfChanges', value: { of: 'stints', atLeast: 60 } },
  ]
  const given = { segments: [1_440], rules, people: crew(10), stops: stopsEvery(24, 59) }
  // With ten 2:24 each: between 2:16:48 and 2:31:12 there is one multiple of 24 min, 144.
  expect(minutesEach(await planned(given))).toEqual(times(10, () => 144))
})

// 24h Leihkart 2018, kartshop-ampfing.de
test('K2: 23 changes in windows of 60n ± 10 min, at most two stints in a row', async () => {
  const windows = times(23, (place) => ({
    ...{ id: `w${place + 1}`, segment: 's1' },
    ...{ fromMs: (60 * (place + 1) - 10) * MINUTE, toMs: (60 * (place + 1) + 10) * MINUTE },
  }))
  const rules: Rule[] = [
    { id: 'windows', kind: 'stopWindows', value: { windows: [...windows] } },
    { id: 'stops', kind: 'mandatoryStops', value: { count: 23, per: 'race' } },
    { id: 'row', kind: 'stintsInARow', value: { atMost: 2 } },
    { id: 'oneself', kind: 'changeWithOneself', value: { begins: true } },
    {
      ...{ id: 'minute', kind: 'stopMinimum' },
      value: { minimumMs: MINUTE, from: 'stopped', to: 'leaving' },
    },
    { id: 'change', kind: 'changeAtStop', value: { changes: true } },
    { id: 'where', kind: 'driverChange', value: { where: 'stoppedInPitLane', order: 'downFirst' } },
  ]
  const given = { segments: [1_440], rules, people: crew(4), stops: stopsEvery(60, 23) }
  const { spans } = await planned(given)
  // 23 changes, some of them with oneself: of 24 stints no three in a row are one person's.
  const drivers = spans.filter(({ duty }) => duty === 'controller').map(({ person }) => person)
  expect(drivers.length).toBe(24)
  expect(
    drivers.some((one, place) => one === drivers[place + 1] && one === drivers[place + 2]),
  ).toBe(false)
})

// MSLS regulations 2019, msls.info
test('K3: five changes in six hours, 70 min at most, a lap between two', async () => {
  const rules: Rule[] = [
    { id: 'changes', kind: 'numberOfChanges', value: { of: 'changes', atLeast: 5 } },
    { id: 'most', kind: 'continuousDriving', value: { atMostMs: 70 * MINUTE } },
    { id: 'oneself', kind: 'changeWithOneself', value: { begins: true } },
    { id: 'lap', kind: 'lapsBetweenChanges', value: { atLeast: 1 } },
  ]
  const given = { segments: [360], rules, people: crew(3), stops: stopsEvery(60, 5) }
  // 6 − 1; six stints of an hour among three, equal to a quarter of an hour.
  expect(minutesEach(await planned(given))).toEqual([120, 120, 120])
})
