import { expect, test } from 'vitest'
import { crewNames } from '../../parts/crew.ts'
import { firstOver } from '../fixture/lanes-on-paper.ts'
import { prepared, running, type PaperLog } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { standingShown } from './standing-shown.ts'

function shown(log: PaperLog, minutes: number) {
  const lines = [
    { place: 1, entrant: 'Tallow Works', laps: 52 },
    { place: 2, entrant: 'Car', laps: 50, ours: true },
  ]
  log.add(minutes, 'classification.1', { standing: 'provisional', scope: 'whole', lines })
  const { state, now } = new PaperMeeting(log, minutes)
  return standingShown({ state, now, crew: crewNames(state, now) })
}

test('of segments that are summed the sum is said, and a penalty in laps comes off once', () => {
  const log = firstOver({
    ...{ id: 'scoring', kind: 'scoring' },
    value: { by: 'lapsAndSections', sections: 'added' },
  })
  const lines = [
    { place: 1, entrant: 'Tallow Works', laps: 52, section: 10 },
    { place: 2, entrant: 'Car', laps: 50, section: 40, ours: true },
  ]
  const of = { standing: 'provisional', scope: 'segment' } as const
  log.add(21, 'classification.1', { ...of, segment: 's1', lines })
  log.add(25, 'green.1', { segment: 's2' })
  log.add(45, 'segmentEnd.1', { segment: 's2' })
  const turned = lines.map((line) => ({ ...line, place: 3 - line.place, laps: 102 - line.laps }))
  log.add(46, 'classification.1', { ...of, segment: 's2', lines: turned })
  log.add(47, 'penalty.1', { what: 'laps', laps: 1, scope: 'race' })
  const { state, now } = new PaperMeeting(log, 48)
  // Ours 50.40 + 52.40 = 102.80 = 103.30, less 1; theirs 52.10 + 50.10 = 102.20. In the last segment we were first.
  expect(standingShown({ state, now, crew: crewNames(state, now) })).toMatchObject({
    ...{ place: '1st, 102.30', gaps: 'too early to compare' },
  })
})

test('a gap is said where it means something', () => {
  expect(shown(running(), 20)).toMatchObject({ place: '2nd, 50', gaps: '2 laps behind 1st' })
  expect(shown(firstOver(), 21)).toMatchObject({ place: '2nd, 50', gaps: 'too early to compare' })
})

test('where the order turned round the gap is in whole laps the other way', () => {
  const corrected = (laps: number, sections: number) => {
    const log = prepared('rules')
    const tracks = { id: 'track', kind: 'tracks', value: { tracks: 1, lanes: 1, sections: 50 } }
    const name = { name: 'Sections on paper', timeZone: 'UTC', programme: [] }
    log.adopt('rules', { ...name, rules: [tracks] })
    const lines = [
      { place: 1, entrant: 'Tallow Works', laps: 52, section: 10 },
      { place: 2, entrant: 'Car', laps: 51, section: 45, ours: true },
    ]
    log.add(20, 'classification.1', { standing: 'provisional', scope: 'whole', lines })
    log.add(21, 'lapsCorrected.1', { laps, sections })
    const { state, now } = new PaperMeeting(log, 22)
    return standingShown({ state, now, crew: crewNames(state, now) })?.gaps
  }
  // Theirs 52.10, ours 51.45 and 0.20 = 52.15: 5 sections ahead.
  expect(corrected(0, 20)).toBe('on the lap of 1st')
  // Ours 53.10 and 53.15: a lap ahead, and a lap and 5 sections; 54.05 is a lap and 45 sections.
  expect([corrected(1, 15), corrected(1, 20), corrected(2, 10)]).toEqual([
    ...['1 lap ahead of 1st', '1 lap ahead of 1st', '1 lap ahead of 1st'],
  ])
  // Ours 54.10.
  expect(corrected(2, 15)).toBe('2 laps ahead of 1st')
})
