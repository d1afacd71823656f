import { expect, test } from 'vitest'
import { crewNames } from '../../parts/crew.ts'
import { firstOver } from '../fixture/lanes-on-paper.ts'
import { running, type PaperLog } from '../fixture/paper-log.ts'
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
