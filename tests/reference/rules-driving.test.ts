/** Driving as published rules limit it, and the arithmetic that follows from their figures. Sources beside each. */
import { expect, test } from 'vitest'
import { HOUR, inMinutes, inTurn, judge, MINUTE, times, verdicts, type Turn } from './by-hand.ts'

const SIX = ['Ana', 'Ben', 'Cem', 'Dov', 'Eva', 'Fee']
const whole = (count: number, minutes: number) => times(count, () => minutes)
const equal = (of: 'time' | 'segments', tolerance?: number) => ({
  value: { of, ...(tolerance === undefined ? {} : { tolerance }) },
})

// S1: BSCRA, 2022 endurance rules, slotcarracing.org.uk/24hour/2022rules.html
test('S1: 360 min among four are two segments each, 90 min', () => {
  const segments = whole(8, 45)
  const drives = inTurn(SIX.slice(0, 4), 8, 45)
  expect(inMinutes(judge({ segments, drives }, 'equalShare', equal('segments')))).toEqual([
    ['kept', 2, 0],
    ['kept', 2, 0],
  ])
  // 8 × 45 ÷ 4 = 90.
  expect(inMinutes(judge({ segments, drives }, 'equalShare', equal('time')))).toEqual([
    ['kept', 90, 0],
    ['kept', 90, 0],
  ])
  const swapped = drives.map((turn): Turn => (turn[1] === 45 ? ['Ana', 45, 90] : turn))
  expect(verdicts(judge({ segments, drives: swapped }, 'equalShare', equal('segments')))).toContain(
    'broken',
  )
})

// S2: Il Cavallino Sanremo, 24 h rules, tuttoslot.it/cavallinosanremo/pres24gioco.htm
test('S2: 1320 min among six are four segments each, 220 min', () => {
  const race = { segments: whole(24, 55), betweenMinutes: 5, drives: inTurn(SIX, 24, 55) }
  expect(inMinutes(judge(race, 'equalShare', equal('segments')))).toEqual([
    ['kept', 4, 0],
    ['kept', 4, 0],
  ])
  // 24 × 55 ÷ 6 = 220.
  expect(inMinutes(judge(race, 'equalShare', equal('time')))).toEqual([
    ['kept', 220, 0],
    ['kept', 220, 0],
  ])
})

test('S2: five cannot be equal in whole segments, and are with 264 min each with changes inside', () => {
  const five = SIX.slice(0, 5)
  const race = { segments: whole(24, 55), betweenMinutes: 5 }
  // Four drive five segments of 55 = 275 min, one drives four = 220 min; 1320 ÷ 5 = 264.
  const inWhole = { ...race, drives: inTurn(five, 24, 55) }
  expect(verdicts(judge(inWhole, 'equalShare', equal('segments')))).toContain('broken')
  const byTime = judge(inWhole, 'equalShare', equal('time'))
  expect(inMinutes(byTime)).toEqual([['broken', 220, -44], ...times(4, () => ['broken', 275, -11])])
  const inside = { ...race, drives: inTurn(five, 5, 264) }
  expect(inMinutes(judge(inside, 'equalShare', equal('time')))).toEqual([
    ['kept', 264, 0],
    ['kept', 264, 0],
  ])
})

test('S2: four to six drivers', () => {
  const among = (count: number) =>
    verdicts(
      judge(
        { segments: whole(7, 55), drives: inTurn([...SIX, 'Gil'].slice(0, count), 7, 55) },
        'numberOfDrivers',
        { value: { atLeast: 4, atMost: 6 } },
      ),
    )
  expect(among(3)).toEqual(['broken', 'kept'])
  expect(among(4)).toEqual(['kept', 'kept'])
  expect(among(6)).toEqual(['kept', 'kept'])
  expect(among(7)).toEqual(['kept', 'broken'])
})

// S4: Resistencia Tarragona 2016, rallyslotclubtarragona.blogspot.com
test('S4: two drivers drive the same number of segments, three of six or two of four', () => {
  const share = (segments: readonly number[], drives: readonly Turn[]) =>
    inMinutes(judge({ segments, drives }, 'equalShare', equal('segments')))
  const pair = ['Ana', 'Ben']
  expect(share(whole(6, 20), inTurn(pair, 6, 20))).toEqual([
    ['kept', 3, 0],
    ['kept', 3, 0],
  ])
  expect(share(whole(4, 30), inTurn(pair, 4, 30))).toEqual([
    ['kept', 2, 0],
    ['kept', 2, 0],
  ])
  // Ana drives four of six: one above, and Ben one below three.
  expect(
    share(whole(6, 20), [
      ['Ana', 0, 80],
      ['Ben', 80, 120],
    ]),
  ).toEqual([
    ['broken', 2, -1],
    ['broken', 4, -1],
  ])
})

// F1: Motorsport UK, National Competition Rules 2026, pages 365 and 401
test('F1: three hours in any five are just kept, and broken by a minute', () => {
  const rule = { value: { atMostMs: 3 * HOUR, withinMs: 5 * HOUR } }
  const race = (secondFrom: number) => ({
    segments: [24 * 60],
    drives: [
      ['Ana', 0, 120],
      ['Ben', 120, secondFrom],
      ['Ana', secondFrom, secondFrom + 180],
    ] satisfies Turn[],
  })
  // Off from 2:00 to 4:00: from 0:00 to 5:00 she drives 2 + 1 = 3 h, in every other five hours less or the same.
  expect(inMinutes(judge(race(240), 'rollingDriving', rule))).toEqual([['kept', 180, 0]])
  // Back at 3:59: 2:00 + 1:01.
  expect(inMinutes(judge(race(239), 'rollingDriving', rule))).toEqual([['broken', 181, -1]])
})

test('F1: over six hours nobody drives more than 60 %, of 24 h 14:24', () => {
  const share = (minutes: number, raceMinutes: number) =>
    inMinutes(
      judge(
        {
          segments: [raceMinutes],
          drives: [
            ['Ana', 0, minutes],
            ['Ben', minutes, raceMinutes],
          ],
        },
        'drivingShare',
        { value: { atMost: 600, longerThanMs: 6 * HOUR } },
      ),
    )
  // 0.6 × 1440 = 864 min = 14:24.
  expect(share(864, 1_440)).toEqual([['kept', 864, 0]])
  expect(share(865, 1_440)).toEqual([['broken', 865, -1]])
  // Six hours are not over six hours.
  expect(share(300, 360)).toEqual([])
})

// F2: FIA WEC, "maximum driving time allowed", fiawec.com; local press 2024
test('F2: three drivers of eight hours each keep within 14 h', () => {
  const three = SIX.slice(0, 3)
  const race = { segments: [1_440], drives: inTurn(three, 12, 120) }
  // 14 − 8 = 6 h.
  expect(inMinutes(judge(race, 'drivingTime', { value: { atMostMs: 14 * HOUR } }))).toEqual([
    ['kept', 480, 360],
  ])
})

test('F2: four hours, one off, four again break four in any six', () => {
  const race = {
    segments: [1_440],
    drives: [
      ['Ana', 0, 240],
      ['Ben', 240, 300],
      ['Ana', 300, 540],
    ] satisfies Turn[],
  }
  // From 0:00 to 6:00: 4 + 1 = 5 h.
  const rule = { value: { atMostMs: 4 * HOUR, withinMs: 6 * HOUR } }
  expect(inMinutes(judge(race, 'rollingDriving', rule))).toEqual([['broken', 300, -60]])
  expect(verdicts(judge(race, 'drivingTime', { value: { atMostMs: 14 * HOUR } }))).toEqual(['kept'])
})

test('F2: in the heat 80 min without a break and 30 min of rest', () => {
  const race = (stint: number, rest: number) => ({
    segments: [600],
    drives: [
      ['Ana', 0, stint],
      ['Ben', stint, stint + rest],
      ['Ana', stint + rest, stint + rest + 20],
    ] satisfies Turn[],
  })
  const continuous = { value: { atMostMs: 80 * MINUTE } }
  expect(inMinutes(judge(race(80, 30), 'continuousDriving', continuous))).toEqual([['kept', 80, 0]])
  expect(inMinutes(judge(race(81, 30), 'continuousDriving', continuous))).toEqual([
    ['broken', 81, -1],
  ])
  const rest = { value: { atLeastMs: 30 * MINUTE, marshalling: 'isRest' as const } }
  expect(inMinutes(judge(race(80, 30), 'driverRest', rest))).toEqual([['kept', 30, 0]])
  expect(inMinutes(judge(race(80, 29), 'driverRest', rest))).toEqual([['broken', 29, -1]])
})

// K1: Telethon 2004 rules, juridique.net
test('K1: 24 h among seven are 3:25:43 each', () => {
  const seven = [...SIX, 'Gil']
  // To the millisecond: a seventh of the day is no whole number of them.
  const at = (place: number) => Math.round((86_400_000 * place) / 7) / MINUTE
  const drives = seven.map((person, place): Turn => [person, at(place), at(place + 1)])
  const found = judge({ segments: [1_440], drives }, 'equalShare', equal('time', 50))
  expect(verdicts(found)).toEqual(['kept', 'kept'])
  // 86,400 s ÷ 7 = 12,342.857 s = 3:25:42.857; 95 % of it are 11,725.714 s, 105 % are 12,960 s.
  expect(found.map(({ limit }) => Math.round(limit / 1_000))).toEqual([11_726, 12_960])
  expect(found[0]?.sentence).toContain('3:25:43')
})

test('K1: ±5 % of 2:24 are 2:16:48 to 2:31:12', () => {
  const ten = [...SIX, 'Gil', 'Hal', 'Ida', 'Jon']
  /** The first drives longer, the second as much less. */
  const found = (moreSeconds: number) => {
    const edge = 144 + moreSeconds / 60
    const drives = ten.map((person, place): Turn => [
      person,
      place === 1 ? edge : place * 144,
      place === 0 ? edge : (place + 1) * 144,
    ])
    return judge({ segments: [1_440], drives }, 'equalShare', equal('time', 50))
  }
  // 2:24 = 8640 s, 5 % of it 432 s = 7:12: 8208 s = 2:16:48 and 9072 s = 2:31:12.
  expect(found(432).map(({ verdict, limit, margin }) => [verdict, limit / 1_000, margin])).toEqual([
    ['kept', 8_208, 0],
    ['kept', 9_072, 0],
  ])
  expect(verdicts(found(433))).toEqual(['broken', 'broken'])
})

test('K1: six to ten drivers, at least 60 stints', () => {
  const stints = (count: number) =>
    inMinutes(
      judge({ segments: [1_440], drives: inTurn(SIX, count, 24) }, 'numberOfChanges', {
        value: { of: 'stints', atLeast: 60 },
      }),
    )
  // 60 × 24 min = 24 h.
  expect(stints(60)).toEqual([['kept', 60, 0]])
  expect(stints(59)).toEqual([['broken', 59, -1]])
})

// K2: 24h Leihkart 2018, kartshop-ampfing.de
test('K2: at most two stints in a row', () => {
  const row = (stints: number) =>
    judge(
      {
        segments: [360],
        drives: [
          ...times(stints, (stint): Turn => ['Ana', stint * 60, stint * 60 + 60]),
          ['Ben', stints * 60, 360],
        ],
      },
      'stintsInARow',
      {
        value: { atMost: 2 },
        also: [{ id: 'oneself', kind: 'changeWithOneself', value: { begins: true } }],
      },
    )
  expect(inMinutes(row(2))).toEqual([['kept', 2, 0]])
  expect(inMinutes(row(3))).toEqual([['broken', 3, -1]])
})

// K3: MSLS regulations 2019, msls.info
const withOneself = {
  id: 'oneself',
  kind: 'changeWithOneself',
  value: { begins: true },
} as const

test('K3: n − 1 changes in n hours, and one with oneself counts', () => {
  const changes = (hours: number, drives: readonly Turn[]) =>
    inMinutes(
      judge({ segments: [hours * 60], drives }, 'numberOfChanges', {
        value: { of: 'changes', atLeast: hours - 1 },
        also: [withOneself],
      }),
    )
  for (const hours of [2, 4, 6]) {
    expect(changes(hours, inTurn(['Ana', 'Ben'], hours, 60))).toEqual([['kept', hours - 1, 0]])
    expect(changes(hours, inTurn(['Ana'], hours, 60))).toEqual([['kept', hours - 1, 0]])
  }
  // Four stints in six hours are three changes of five.
  expect(changes(6, inTurn(['Ana', 'Ben'], 4, 90))).toEqual([['broken', 3, -2]])
})

test('K3: at most 70 min, and a change with oneself begins anew', () => {
  const longest = (drives: readonly Turn[]) =>
    inMinutes(
      judge({ segments: [240], drives }, 'continuousDriving', {
        value: { atMostMs: 70 * MINUTE },
        also: [withOneself],
      }),
    )
  expect(longest(inTurn(['Ana', 'Ben'], 3, 70))).toEqual([['kept', 70, 0]])
  expect(longest(inTurn(['Ana'], 3, 70))).toEqual([['kept', 70, 0]])
  expect(longest([['Ana', 0, 71]])).toEqual([['broken', 71, -1]])
})

test('K3: at least one lap between two changes', () => {
  const laps = (minutes: number) => {
    const end = 60 + minutes
    const drives: readonly Turn[] = [...inTurn(['Ana'], 1, 60), ['Ben', 60, end], ['Ana', end, 120]]
    return inMinutes(
      judge({ segments: [120], drives, paceMs: MINUTE }, 'lapsBetweenChanges', {
        value: { atLeast: 1 },
        also: [withOneself],
      }),
    )
  }
  // A lap of a minute: in one and a half the kart laps once, in one just once, in half a minute not at all.
  expect(laps(1.5)).toEqual([['kept', 1, 0]])
  expect(laps(1)).toEqual([['kept', 1, 0]])
  expect(laps(0.5)).toEqual([['broken', 0, -1]])
})
