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

test('a gap is said where it means something', () => {
  expect(shown(running(), 20)).toMatchObject({ place: '2nd, 50', gaps: '2 laps behind 1st' })
  expect(shown(firstOver(), 21)).toMatchObject({ place: '2nd, 50', gaps: 'too early to compare' })
})
