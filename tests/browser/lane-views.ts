/** Fixed lanes, and the day that goes wrong: each screen in the states that look different. */
import type { Page } from 'playwright-core'
import type { DocumentContent } from '@pitlamp/race'
import { onLanes } from './lane-meeting.ts'
import { adoption, enterMeeting, LANTERN_FORTY } from './lantern-forty.ts'
import { verb } from './screens.ts'
import { text, type Happens, type View } from './view.ts'

/** The first segment ended two minutes ago. */
const ended: Happens = ({ press }) => press('segmentEnd.1', { segment: 's1' }, 120)

const heldBy = (name: string, then: string | RegExp) => async (page: Page) => {
  await page.getByRole('button', { name }).click()
  await page.getByText(then).first().waitFor()
}

/** Six segments classified, two teams level; the seventh, on a lane, is over as well. */
const classified: Happens = async ({ press }) => {
  for (const [index, ours] of [50, 52, 51, 49].entries()) {
    const segment = `s${index + 1}`
    if (index > 0) await press('green.1', { segment }, 1_200 - index * 200)
    await press('segmentEnd.1', { segment }, 1_100 - index * 200)
    const lines = [
      { place: 1, entrant: 'Tallow Works', laps: 52, section: 35 },
      { place: 2, entrant: 'Wren Mark 4', laps: ours, section: 10, ours: true },
      { place: 3, entrant: 'Fen Lights', laps: 47, section: 5 },
    ]
    const body = { standing: 'official', scope: 'segment', segment, lines } as const
    await press('classification.1', body, 1_090 - index * 200)
  }
}

/** A whole day on six lanes of two tracks, all but the last segment classified. */
const aDay: View['open'] = async (house) => {
  const captain = await house.captain()
  const meeting = await enterMeeting(captain)
  const numbers = Array.from({ length: 24 }, (_, index) => index + 1)
  const length = { by: 'time' as const, lengthMs: 3_300_000 }
  const content: DocumentContent<'rules'> = {
    ...LANTERN_FORTY.rules,
    programme: numbers.map((one) => ({ id: `s${one}`, kind: 'segment' as const, length })),
    rules: [
      { id: 'track', kind: 'tracks', value: { tracks: 2, lanes: 6, sections: 50 } },
      { id: 'score', kind: 'scoring', value: { by: 'lapsAndSections', sections: 'added' } },
    ],
  }
  const path = `/api/meetings/${meeting.id}/documents/rules`
  await captain.call('PUT', path, { basedOn: 1, content })
  await meeting.press('adopted.1', { ...adoption('rules', content), version: 2 }, 300)
  for (const number of numbers.slice(0, 23)) {
    const [segment, ago] = [`s${number}`, 250 - 10 * number]
    await meeting.press('green.1', { segment }, ago + 8)
    await meeting.press('segmentEnd.1', { segment }, ago + 4)
    const lines = ['Tallow Works', 'Wren Mark 4', 'Fen Lights', 'Copper Kettle of Lower Marsham']
      .map((entrant, index) => ({ entrant, index, place: ((index + number) % 4) + 1 }))
      .map(({ entrant, index, place }) => ({
        ...{ place, entrant, laps: 352 - 2 * place, section: (7 * index + number) % 50 },
        ours: index === 1,
      }))
    const body = { standing: 'official', scope: 'segment', segment, lines } as const
    await meeting.press('classification.1', body, ago)
  }
  const places = { what: 'position', scope: 'race', words: '1 place' } as const
  await meeting.press('penalty.1', places, 10)
  return { page: await house.screen('pitWall', 'Wall tablet'), path: meeting.path('results') }
}

export const LANE_VIEWS: readonly View[] = [
  {
    name: 'lane change, wall',
    lit: 'one',
    open: onLanes('wall', { minutesAfterGreen: 22, happens: ended }),
    ready: text('Lane change, 1 of 8'),
  },
  {
    name: 'lane change, driver',
    lit: 'one',
    open: onLanes('driver', { role: 'crew', minutesAfterGreen: 22, happens: ended }),
    ready: heldBy('Tom Wick', 'You drive'),
  },
  {
    name: 'lane change, marshal',
    lit: 'one',
    open: onLanes('marshal', { role: 'crew', minutesAfterGreen: 22, happens: ended }),
    ready: heldBy('Bea Lorne', 'You to post 3'),
  },
  {
    name: 'lane change, not drawn yet',
    lit: 'one',
    open: onLanes('wall', { minutesAfterGreen: 22, start: null, happens: ended }),
    ready: text('Say which lane was drawn'),
  },
  {
    name: 'wall, on a lane',
    lit: 'none',
    open: onLanes('wall', { minutesAfterGreen: 3 }),
    ready: text('Lane 1, red'),
  },
  {
    name: 'wall, the draw',
    lit: 'none',
    open: onLanes('wall', { start: null }),
    ready: async (page) => {
      await verb(page, 'Lane').click()
      await page.getByRole('group', { name: 'We begin on' }).waitFor()
    },
  },
  {
    name: 'wall, race control changes a segment',
    lit: 'none',
    open: onLanes('wall', { minutesAfterGreen: 3 }),
    ready: async (page) => {
      await verb(page, 'Race control said').click()
      await page.getByRole('group', { name: 'Segment 1, running' }).scrollIntoViewIfNeeded()
    },
  },
  {
    name: 'driver, on a lane',
    lit: 'none',
    open: onLanes('driver', { role: 'crew', minutesAfterGreen: 3 }),
    ready: heldBy('Ida Quill', '1, red'),
  },
  {
    name: 'lane change, sit-out',
    lit: 'one',
    open: onLanes('wall', {
      ...{ minutesAfterGreen: 22, start: 5 },
      happens: ended,
    }),
    ready: text('We marshal, 2 posts'),
  },
  {
    name: 'wall, the car and the spare',
    lit: 'none',
    open: onLanes('wall', { minutesAfterGreen: 3 }),
    ready: async (page) => {
      await page.getByRole('button', { name: /^The car:/ }).click()
      await page.getByRole('group', { name: 'Car exchanged for' }).scrollIntoViewIfNeeded()
    },
  },
  {
    name: 'rotation, on lanes',
    lit: 'one',
    open: onLanes('rotation', { role: 'captain' }),
    ready: text('Lane 1, segment 1'),
  },
  {
    name: 'results',
    lit: 'none',
    open: onLanes('results', { minutesAfterGreen: 22, happens: classified }),
    ready: text('Too early to compare'),
  },
  {
    name: 'results, a whole day',
    lit: 'none',
    open: aDay,
    ready: async (page) => {
      await page.getByRole('button', { name: /^Segment 23: / }).click()
      await page.getByRole('list', { name: 'Segment 23' }).waitFor()
    },
  },
  {
    name: 'results, none yet',
    lit: 'none',
    open: onLanes('results', { role: 'crew', minutesAfterGreen: 3 }),
    ready: text('No segment’s classification'),
  },
  {
    name: 'marshal, beside a lane',
    lit: 'none',
    open: onLanes('marshal', { role: 'crew', minutesAfterGreen: 3 }),
    ready: heldBy('Bea Lorne', 'Our car'),
  },
]
