import { expect, test } from 'vitest'
import { crewNames } from '../../parts/crew.ts'
import { onLanes } from '../fixture/lanes-on-paper.ts'
import { MINUTE, running, START, type PaperLog } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { ribbonOf } from './ribbon-of.ts'

function lanes(log: PaperLog) {
  const { state, now } = new PaperMeeting(log, -10)
  return ribbonOf({ state, now, crew: crewNames(state, now) }, true).lanes
}

test('over each segment stands its lane, where there are lanes', () => {
  const log = onLanes()
  expect(lanes(log)?.map(({ word }) => word)).toEqual(['?', '?', '?', '?'])
  log.add(-15, 'startDrawn.1', { lane: 1 })
  const drawn = lanes(log) ?? []
  // 1, 3, sat out, 2; twenty minutes each.
  expect(drawn.map(({ word }) => word)).toEqual(['1', '3', '–', '2'])
  expect(drawn[0]).toMatchObject({ fromAt: START, toAt: START + 20 * MINUTE })
  expect(lanes(running())).toEqual([])
})
