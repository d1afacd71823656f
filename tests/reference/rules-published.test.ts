/** S1–S8: what each set publishes, as the starting points offer it. Sources stand beside each. */
import { STARTING_POINTS, type RuleKind } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { MINUTE, HOUR } from './by-hand.ts'

function regulations(id: string) {
  const found = STARTING_POINTS.find((point) => point.id === id)
  if (!found) throw new Error(`There is no starting point ${id}.`)
  return found.regulations
}

const valuesOf = (id: string, kind: RuleKind) =>
  regulations(id)
    .rules.filter((rule) => rule.kind === kind)
    .map(({ value }) => value)

const lengths = (id: string) =>
  regulations(id).programme.flatMap((item) =>
    item.kind === 'segment' && item.length.by === 'time' ? [item.length.lengthMs] : [],
  )

const sum = (all: readonly number[]) => all.reduce((one, other) => one + other, 0)

// BSCRA, 2022 endurance rules, slotcarracing.org.uk/24hour/2022rules.html; motors and chassis as competitors report
// them in slotcarracing.org.uk/24hour/july2022.html.
test('S1: six hours are eight segments of 45 min, five and six dark; two motors, a second chassis −100', () => {
  expect(lengths('endurance-cup-2022')).toEqual(Array.from({ length: 8 }, () => 45 * MINUTE))
  expect(sum(lengths('endurance-cup-2022'))).toBe(6 * HOUR)
  expect(valuesOf('endurance-cup-2022', 'darkSegments')).toEqual([{ segments: ['s5', 's6'] }])
  expect(valuesOf('endurance-cup-2022', 'allowance')).toMatchObject([
    { of: 'motors', count: 2 },
    { of: 'chassis', count: 1, costLaps: 100 },
  ])
  const reported = regulations('endurance-cup-2022').rules.filter(
    ({ kind }) => kind === 'allowance',
  )
  expect(reported.every(({ words }) => words?.startsWith('Reported by competitors'))).toBe(true)
})

// Il Cavallino Sanremo, 24 h rules, tuttoslot.it/cavallinosanremo/pres24gioco.htm
test('S2: 24 segments of 55 min with 5 min between on two tracks of six lanes, four to six drivers', () => {
  const id = 'two-tracks-24-hours'
  expect(lengths(id).length).toBe(24)
  // 24 × 55 = 1320.
  expect(sum(lengths(id))).toBe(1_320 * MINUTE)
  expect(valuesOf(id, 'tracks')).toEqual([{ tracks: 2, lanes: 6 }])
  expect(valuesOf(id, 'laneOrder')).toEqual([{ moves: 'oddUpEvenDown' }])
  expect(valuesOf(id, 'laneChange')).toEqual([{ lengthMs: 300_000, earliestMs: 180_000 }])
  expect(valuesOf(id, 'numberOfDrivers')).toEqual([{ atLeast: 4, atMost: 6 }])
  expect(valuesOf(id, 'penalty')).toMatchObject([{ is: 'laps', amount: 10 }])
  expect(valuesOf(id, 'driverChange')).toMatchObject([{ where: 'stoppedInPitLane' }])
})

// Endurance d’autunno a Prato 2009, italiaslot.com
test('S3: twelve hours; −5 laps a segment without lights; six sets of rear tyres with the first', () => {
  expect(sum(lengths('autumn-endurance-2009'))).toBe(12 * HOUR)
  expect(valuesOf('autumn-endurance-2009', 'penalty')).toMatchObject([
    { is: 'laps', amount: 5, scope: 'segment' },
  ])
  expect(valuesOf('autumn-endurance-2009', 'allowance')).toMatchObject([
    { of: 'tyreSets', count: 6 },
  ])
})

// Resistencia Tarragona 2016, rallyslotclubtarragona.blogspot.com
test('S4: two hours are six segments of 20 min; two drivers, the same number of segments each', () => {
  expect(lengths('pairs-series-2016')).toEqual(Array.from({ length: 6 }, () => 20 * MINUTE))
  expect(sum(lengths('pairs-series-2016'))).toBe(2 * HOUR)
  expect(valuesOf('pairs-series-2016', 'numberOfDrivers')).toEqual([{ atLeast: 2, atMost: 2 }])
  expect(valuesOf('pairs-series-2016', 'equalShare')).toEqual([{ of: 'segments' }])
})

// As competitors report it: slotblog.net topic 101081
test('S5: four hours in 24 segments; the motor changed in segment 12 or 13 with the power on', () => {
  expect(lengths('four-hour-enduro-2022').length).toBe(24)
  expect(sum(lengths('four-hour-enduro-2022'))).toBe(4 * HOUR)
  expect(valuesOf('four-hour-enduro-2022', 'stopTask')).toEqual([
    { task: 'Motor change', times: 1, segments: ['s12', 's13'], power: 'on' },
  ])
  const { rules } = regulations('four-hour-enduro-2022')
  expect(rules.every(({ words }) => words?.startsWith('Reported by competitors'))).toBe(true)
})

// Organiser’s rules v1.3 of 4 April 2015, doczz.net/doc/1067400
test('S6: three stages of eight segments of 60 min, of which 5 are lane change; points a stage', () => {
  // 60 − 5 = 55.
  expect(lengths('three-stages-2015')).toEqual(Array.from({ length: 24 }, () => 55 * MINUTE))
  expect(valuesOf('three-stages-2015', 'laneChange')).toEqual([{ lengthMs: 300_000 }])
  expect(valuesOf('three-stages-2015', 'points')).toMatchObject([{ per: 'stage' }])
  expect(valuesOf('three-stages-2015', 'workAllowed')).toEqual([
    { during: 'parcFerme', allowed: false },
  ])
})

// Dijon Racing Slot, GT rules, dijon-racing-slot.com/reglement-gt
test('S7: the wing all race; work during a lane change −8 laps, the spare car −10', () => {
  expect(valuesOf('wing-all-race', 'compulsoryRepair')).toMatchObject([{ what: 'Wing' }])
  expect(valuesOf('wing-all-race', 'workAllowed')).toEqual([
    { during: 'laneChange', allowed: true, costLaps: 8 },
  ])
  expect(valuesOf('wing-all-race', 'allowance')).toMatchObject([
    { of: 'cars', count: 1, costLaps: 10 },
  ])
})

// Icària Slot, general rules, icariaslot.cat/reglaments
test('S8: a lost wing first at the next lane change and nothing else then, afterwards within 4 laps', () => {
  expect(valuesOf('wing-refitted', 'compulsoryRepair')).toMatchObject([
    { laps: 4, firstTime: 'laneChange', causedByOthers: 'asFirst', elseAtStop: 'nothing' },
  ])
})
