import type { Rule } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { firstOver } from '../fixture/lanes-on-paper.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { ResultsModel } from './results-model.svelte.ts'

const TWO_LANES: Rule = {
  id: 'track',
  kind: 'tracks',
  value: { tracks: 1, lanes: 2, sections: 50, colours: ['red', 'white'] },
}
const NO_SIT_OUT: Rule = { id: 'order', kind: 'laneOrder', value: { moves: 'oddUpEvenDown' } }

function at(minutes: number) {
  const meeting = new PaperMeeting(firstOver(), minutes)
  return { meeting, model: new ResultsModel(() => meeting) }
}

test('a table is pasted, recorded for the segment that is over, and summed', () => {
  const { meeting, model } = at(21)
  expect(model.segment).toBe('s1')
  model.paste('1  Tallow Works  52.05\n2  Car  51.20\nwhat 7')
  expect(model.unread).toEqual(['what 7'])
  model.record('official')
  const lines = [
    { place: 1, entrant: 'Tallow Works', laps: 52, section: 5 },
    { place: 2, entrant: 'Car', laps: 51, section: 20, ours: true },
  ]
  expect(meeting.last).toEqual({
    kind: 'classification.1',
    body: { standing: 'official', scope: 'segment', segment: 's1', lines },
  })
  expect(model.shown.all?.lines).toMatchObject([
    { place: '1st', entrant: 'Tallow Works', value: '52.05' },
    { place: '2nd', entrant: 'Car', ours: true, value: '51.20' },
  ])
  expect(model.shown.segments).toMatchObject([{ title: 'Segment 1', words: '2nd of 2, 51.20' }])
})

test('no gap is said before every team has had every lane', () => {
  const { model } = at(21)
  model.paste('1  Tallow Works  52.05\n2  Car  51.20')
  model.record('provisional')
  // Three lanes and a sit-out make a round of four.
  expect(model.shown.caveat).toBe(
    'Too early to compare: every team has had every lane after 4 segments.',
  )
  expect(model.shown.all?.lines.map(({ behind }) => behind)).toEqual([undefined, undefined])
})

test('after the round gaps are laps and sections', () => {
  const { meeting, model } = at(21)
  for (const number of [2, 3, 4]) {
    meeting.at(number * 25)
    meeting.press('green.1', { segment: `s${number}` })
    meeting.at(number * 25 + 20)
    meeting.press('segmentEnd.1', { segment: `s${number}` })
  }
  model.chooseSegment('s4')
  model.paste('1  Tallow Works  52.05\n2  Car  51.20')
  model.record('official')
  // 52.05 less 51.20 of 50 sections: 35 sections.
  expect(model.shown.caveat).toBeUndefined()
  expect(model.shown.all?.lines[1]?.behind).toBe('35 sections behind')
})

test('places lost and penalties that are not counted are said', () => {
  const { meeting, model } = at(21)
  model.paste('1  Car  52.05\n2  Tallow Works  51.20')
  model.record('official')
  meeting.at(22)
  meeting.press('penalty.1', { what: 'position', scope: 'race', words: '1 place' })
  meeting.press('penalty.1', { what: 'stopAndGo', scope: 'race', heldMs: 10_000 })
  expect(model.shown.all?.lines).toMatchObject([
    { place: '1st', entrant: 'Tallow Works' },
    { place: '2nd', entrant: 'Car', notes: ['1 place down by penalty'] },
  ])
  expect(model.shown.notCounted).toEqual([
    'Not counted: Stop-and-go, 10 s; it is not served yet, and has cost no lap.',
  ])
})

test('over whole rounds too a penalty is set against all that was entered, and is said once', () => {
  // Two lanes: after two segments of four every team has had both.
  const meeting = new PaperMeeting(firstOver(TWO_LANES, NO_SIT_OUT), 21)
  const model = new ResultsModel(() => meeting)
  const enter = (segment: string) => {
    model.chooseSegment(segment)
    model.paste('1  Car  52.05\n2  Tallow Works  51.20')
    model.record('official')
  }
  enter('s1')
  for (const number of [2, 3]) {
    meeting.at(number * 25)
    meeting.press('green.1', { segment: `s${number}` })
    meeting.at(number * 25 + 10)
    const words = `${number} places`
    meeting.press('penalty.1', { what: 'position', scope: 'segment', words })
    meeting.at(number * 25 + 20)
    meeting.press('segmentEnd.1', { segment: `s${number}` })
  }
  enter('s2')
  expect(model.shown.compared?.title).toContain('Over the first 2 segments')
  const waits = 'it counts once that segment’s classification is entered again.'
  // The one of the second was in the second when it was entered.
  expect(model.shown.notCounted).toEqual([`Not counted: 3 places; ${waits}`])
  enter('s3')
  expect(model.shown.notCounted).toEqual([])
})

test('a penalty of places that takes none is said', () => {
  const { meeting, model } = at(21)
  model.paste('1  Tallow Works  52.05\n2  Car  51.20')
  model.record('official')
  meeting.press('penalty.1', { what: 'position', scope: 'race', words: '2 places' })
  expect(model.shown.notCounted).toEqual(['Not counted: 2 places; without it we are as far down.'])
})

test('a segment stays open where its classification is entered again', () => {
  const { meeting, model } = at(21)
  model.paste('1  Tallow Works  52.05\n2  Car  51.20')
  model.record('provisional')
  const first = model.shown.segments[0]?.id
  meeting.at(22)
  model.paste('1  Tallow Works  52.05\n2  Car  51.25')
  model.record('official')
  expect(model.shown.segments).toMatchObject([{ id: first, words: '2nd of 2, 51.25' }])
})

test('a segment stands in its square with our place, and opens to all teams', () => {
  const { model } = at(21)
  model.paste('1  Tallow Works  52.05\n2  Car  51.20')
  model.record('official')
  expect(model.shown.segments.map(({ id: _, ...shown }) => shown)).toEqual([
    {
      ...{ title: 'Segment 1', mark: '1', words: '2nd of 2, 51.20' },
      ...{ place: '2nd', value: '51.20' },
      lines: [
        {
          ...{ id: '1 Tallow Works', place: '1st', entrant: 'Tallow Works' },
          ...{ value: '52.05', ours: false },
        },
        { id: '2 Car', place: '2nd', entrant: 'Car', value: '51.20', ours: true },
      ],
    },
  ])
})
