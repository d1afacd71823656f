import { expect, test } from 'vitest'
import type { Body } from '../entry/kinds/index.ts'
import type { Rule } from '../rules/index.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, smallMeeting } from '../testing/small-meeting.ts'
import { standing } from './standing.ts'

const fifty: Rule = { id: 'track', kind: 'tracks', value: { tracks: 1, lanes: 6, sections: 50 } }
const LINES: Body<'classification.1'>['lines'] = [
  { place: 3, entrant: 'Lantern', laps: 405, section: 0 },
  { place: 1, entrant: 'Wren', laps: 413, section: 10 },
  { place: 2, entrant: 'Us', laps: 412, section: 35, ours: true },
]

function classified(lines = LINES, rules: readonly Rule[] = [fifty]): Pressing {
  const pressing = smallMeeting({ rules })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + MINUTE, 'penalty.1', { what: 'laps', laps: 9, scope: 'race' })
  const body = { standing: 'provisional', scope: 'segment', segment: 'one', lines } as const
  pressing.press(GREEN + 10 * MINUTE, 'classification.1', { ...body, asAtClockMs: 595_000 })
  return pressing
}

const now = GREEN + 20 * MINUTE

test('our line is read off the last classification, with those around us', () => {
  expect(standing(classified().state(), now)).toMatchObject({
    ...{ standing: 'provisional', scope: 'segment', segment: 'one', asAtClockMs: 595_000 },
    ...{ at: GREEN + 10 * MINUTE, place: 2, of: 3, sectionsPerLap: 50 },
    ...{ shown: { laps: 412, sections: 35 }, ours: { laps: 412, sections: 35 } },
    since: { penaltyLaps: 0, correctedLaps: 0, correctedSections: 0 },
    // 413.10 − 412.35 = 25 sections of 50.
    ahead: { place: 1, entrant: 'Wren', gap: { laps: 0, sections: 25 } },
    // 412.35 − 405.00.
    behind: { place: 3, entrant: 'Lantern', gap: { laps: 7, sections: 35 } },
  })
})

test('L42: penalties in laps and corrections since are taken in, those before are in it already', () => {
  const pressing = classified()
  pressing.press(GREEN + 11 * MINUTE, 'penalty.1', { what: 'laps', laps: 8, scope: 'race' })
  pressing.press(GREEN + 12 * MINUTE, 'penalty.1', { what: 'secondsHeld', scope: 'race' })
  pressing.press(GREEN + 13 * MINUTE, 'lapsCorrected.1', { laps: 2, sections: 20 })
  // 412.35 + 2.20 − 8 = 406.55 = 407.05.
  expect(standing(pressing.state(), now)).toMatchObject({
    ...{ shown: { laps: 412, sections: 35 }, ours: { laps: 407, sections: 5 } },
    since: { penaltyLaps: 8, correctedLaps: 2, correctedSections: 20 },
    // 413.10 − 407.05, and 407.05 − 405.00.
    ahead: { gap: { laps: 6, sections: 5 } },
    behind: { gap: { laps: 2, sections: 5 } },
  })
})

test('L42: a penalty withdrawn since gives its laps back, one given and withdrawn since is none', () => {
  const pressing = classified()
  const [before] = pressing.state().raceControl.penalties
  const penalty = pressing.press(GREEN + 11 * MINUTE, 'penalty.1', {
    ...{ what: 'laps', laps: 8, scope: 'race' },
  })
  pressing.press(GREEN + 12 * MINUTE, 'penaltyWithdrawn.1', { penalty })
  pressing.press(GREEN + 12 * MINUTE, 'penaltyWithdrawn.1', { penalty: before?.entry ?? '' })
  expect(standing(pressing.state(), now)).toMatchObject({
    ...{ ours: { laps: 421, sections: 35 }, since: { penaltyLaps: -9 } },
  })
})

test('while cars run there are whole laps and no section', () => {
  const lines = LINES.map(({ section: _section, ...line }) => line)
  const found = standing(classified(lines, []).state(), now)
  expect(found?.ours).toEqual({ laps: 412 })
  expect(found?.ahead?.gap).toEqual({ laps: 1 })
})

test('first and last have nobody beyond them', () => {
  const alone = standing(classified(LINES.slice(2)).state(), now)
  expect([alone?.ahead, alone?.behind]).toEqual([undefined, undefined])
})

test('one without our line is passed over, and without any there is no standing', () => {
  const pressing = classified()
  const lines = LINES.map(({ ours: _ours, ...line }) => line)
  const body = { standing: 'provisional', scope: 'whole', lines } as const
  pressing.press(GREEN + 15 * MINUTE, 'classification.1', body)
  expect(standing(pressing.state(), now)?.at).toBe(GREEN + 10 * MINUTE)
  expect(standing(smallMeeting().state(), now)).toBeUndefined()
})

test('of how many is said only where everybody was entered', () => {
  const ofHowMany = (lines: typeof LINES) => standing(classified(lines).state(), now)?.of
  const us = { entrant: 'Us', laps: 412, ours: true } as const
  expect(ofHowMany([{ ...us, place: 1 }])).toBeUndefined()
  expect(ofHowMany([{ ...us, place: 3 }])).toBeUndefined()
  const around = [
    { place: 2, entrant: 'Wren', laps: 413 },
    { place: 4, entrant: 'Lantern', laps: 405 },
  ]
  expect(ofHowMany([{ ...us, place: 3 }, ...around])).toBeUndefined()
  expect(
    ofHowMany([{ ...us, place: 3 }, { place: 1, entrant: 'Moth', laps: 420 }, ...around]),
  ).toBe(4)
})
