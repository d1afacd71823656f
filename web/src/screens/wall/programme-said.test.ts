import { expect, test } from 'vitest'
import { firstOver } from '../fixture/lanes-on-paper.ts'
import { MINUTE, running } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { laterTiles, programmeLater, segmentChanged, segmentsSaid } from './programme-said.ts'

const ids = (tiles: readonly { readonly id: string }[]) => tiles.map(({ id }) => id)

test('later by 5, 10, 20 or by what is typed, which may also be earlier', () => {
  const { state, now } = new PaperMeeting(running(), 20)
  expect(ids(laterTiles(state, now))).toEqual(['5', '10', '20'])
  expect(ids(laterTiles(state, now, 7))).toEqual(['5', '10', '20', '7', '-7'])
  expect(ids(laterTiles(state, now, 10))).toEqual(['5', '10', '20', '-10'])
  expect(programmeLater(state, now, '7')).toEqual({
    kind: 'programmeMoved.1',
    body: { fromItem: 's2', byMs: 7 * MINUTE },
    word: '7 min later',
  })
  expect(programmeLater(state, now, '-7')).toMatchObject({
    body: { byMs: -7 * MINUTE },
    word: '7 min earlier',
  })
})

test('the running segment is made shorter, abandoned, or run again', () => {
  const { state, now } = new PaperMeeting(running(), 20)
  const [said] = segmentsSaid(state, now)
  expect(said).toMatchObject({ segment: 's1', label: 'Segment 1, running' })
  expect(said?.tiles[0]).toMatchObject({ off: true, hint: 'how many minutes?' })
  const [typed] = segmentsSaid(state, now, 90)
  expect(typed?.tiles[0]).toEqual({ id: 'length 90', word: '90 min long' })
  expect(segmentChanged('s1', 'length 90').body).toEqual({
    segment: 's1',
    change: { what: 'length', lengthMs: 90 * MINUTE },
  })
  expect(segmentChanged('s1', 'abandoned').body).toMatchObject({ change: { what: 'abandoned' } })
  expect(segmentChanged('s1', 'runAgain yes no').body).toMatchObject({
    change: { what: 'runAgain', lapsCount: true, drivingCounts: false },
  })
})

test('between two segments the one that is over is run again, the one that comes changed', () => {
  const { state, now } = new PaperMeeting(firstOver(), 21)
  const said = segmentsSaid(state, now, 15)
  expect(said.map(({ label }) => label)).toEqual(['Segment 1, over', 'Segment 2, to come'])
  expect(said.map(({ tiles }) => tiles.length)).toEqual([4, 2])
})

test('a segment run again is the next one', () => {
  const meeting = new PaperMeeting(firstOver(), 21)
  const press = segmentChanged('s1', 'runAgain no no')
  if (press.kind === 'segmentChanged.1') meeting.press('segmentChanged.1', press.body)
  expect(segmentsSaid(meeting.state, meeting.now).map(({ label }) => label)).toEqual([
    'Segment 1, over',
    'Segment 1, to come',
  ])
})
