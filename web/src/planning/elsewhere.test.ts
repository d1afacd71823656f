import { planTimeline } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { onLanes } from '../screens/fixture/lanes-on-paper.ts'
import { ADA, BEN, CHO, prepared } from '../screens/fixture/paper-log.ts'
import { PaperMeeting } from '../screens/fixture/paper-meeting.svelte.ts'
import { doubledWords } from './elsewhere.ts'

const NAMES: Readonly<Record<string, string>> = { [ADA]: 'Ada', [BEN]: 'Ben', [CHO]: 'Cho' }

test('whoever is asked to be in two places is named, with where and when', () => {
  const [here, there] = [onLanes(), prepared()].map((log) => {
    const { state, now } = new PaperMeeting(log, -30)
    return planTimeline(state, now)
  })
  if (!here || !there) throw new Error('Two plans are compared.')
  const saying = { timeZone: 'UTC', nameOf: (person: string) => NAMES[person] ?? '' }
  const words = doubledWords(here, [{ name: 'Relay', timeline: there }], saying)
  // The paper's day is that of 1 January 1970, where days begin: it is not said. Both begin at 11:00; there Ada drives and Ben marshals until 11:40, then Ben drives and Cho marshals.
  expect(words.slice(0, 3)).toEqual([
    'Ada: drives here, drives in Relay, 11:00 to 11:20',
    'Ben: drives here, post 4 in Relay, 11:25 to 11:40',
    'Ben: drives here, drives in Relay, 11:40 to 11:45',
  ])
})
