/** Every screen in the states that look different, each from a meeting of its own. */
import type { Page } from 'playwright-core'
import { LANE_VIEWS } from './lane-views.ts'
import { IDA, TOM } from './lantern-forty.ts'
import { PLANNING_VIEWS } from './planning-views.ts'
import { verb } from './screens.ts'
import { STOP_VIEWS } from './stop-views.ts'
import { TEAM_VIEWS } from './team-views.ts'
import { showing, text, type Happens, type View } from './view.ts'
import { WALL_VIEWS } from './wall-views.ts'

/** The race is here, and the verbs of green are awake. */
const green = (page: Page) => verb(page, 'De-slot').waitFor()
const heldBy = (name: string, then: string) => async (page: Page) => {
  await page.getByRole('button', { name }).click()
  await page.getByText(then).first().waitFor()
}

/** A stint and a stop due in half a minute, two faults of which one is being mended, a call nobody answered. */
const busy: Happens = async ({ press }) => {
  await press('incident.1', { what: 'deSlot' }, 300)
  await press('faultNoted.1', { fault: 'Rear wing' }, 240)
  const braid = await press('faultNoted.1', { fault: 'Braid' }, 200)
  await press('repairStarted.1', { fault: braid }, 20)
  await press('call.1', { person: TOM, words: 'You drive next, get ready' }, 30)
  await press('note.1', { words: 'Marbles at the hairpin since the last track call' }, 10)
}
const carIn =
  (secondsAgo: number): Happens =>
  async ({ press }) => {
    await press('faultNoted.1', { fault: 'Front splitter' }, 200)
    await press('stopIn.1', { moment: 'stopped', planned: 't1' }, secondsAgo)
  }

export const VIEWS: readonly View[] = [
  // First: later ones make meetings.
  {
    name: 'meetings, empty',
    lit: 'none',
    open: async (house) => ({ page: await house.screen('captain', 'Laptop'), path: '/' }),
    ready: text('No meeting yet'),
  },
  {
    name: 'join',
    lit: 'none',
    open: async (house) => ({ page: await house.blank(), path: '/join' }),
    ready: text('What this device is called'),
  },
  ...PLANNING_VIEWS,
  ...TEAM_VIEWS,
  ...LANE_VIEWS,
  {
    name: 'wall, before the start',
    lit: 'none',
    open: showing({ screen: 'wall' }),
    ready: (page) => verb(page, 'Green').waitFor(),
  },
  {
    name: 'wall, calm',
    lit: 'none',
    open: showing({ screen: 'wall', minutes: 3 }),
    ready: green,
  },
  {
    name: 'wall, busy',
    lit: 'one',
    open: showing({ screen: 'wall', minutes: 12.5, happens: busy }),
    ready: green,
  },
  {
    name: 'wall, power off',
    lit: 'none',
    open: showing({
      screen: 'wall',
      minutes: 3,
      happens: ({ press }) => press('trackCall.1', {}, 15),
    }),
    ready: (page) => verb(page, 'Power is on').waitFor(),
  },
  {
    name: 'wall, change',
    lit: 'none',
    open: showing({ screen: 'wall', minutes: 3 }),
    ready: async (page) => {
      await green(page)
      await verb(page, 'Change').click()
      await page.getByRole('button', { name: 'Record the change' }).waitFor()
    },
  },
  {
    name: 'wall, fault',
    lit: 'one',
    open: showing({ screen: 'wall', minutes: 3 }),
    ready: async (page) => {
      await green(page)
      await verb(page, 'Fault').click()
      await page.getByRole('button', { name: 'Body loose' }).waitFor()
    },
  },
  {
    name: 'wall, set clock',
    lit: 'none',
    open: showing({
      screen: 'wall',
      minutes: 3,
      happens: ({ press }) => press('trackCall.1', {}, 15),
    }),
    ready: async (page) => {
      await verb(page, 'Set clock').click()
      await page.getByRole('button', { name: 'It shows this now' }).waitFor()
    },
  },
  {
    name: 'wall, more',
    lit: 'none',
    open: showing({ screen: 'wall', minutes: 3 }),
    ready: async (page) => {
      await green(page)
      await verb(page, 'More').click()
      await page.getByRole('dialog', { name: 'More' }).waitFor()
    },
  },
  {
    name: 'wall, break',
    lit: 'none',
    open: showing({
      screen: 'wall',
      minutes: 40,
      happens: ({ press }) => press('segmentEnd.1', { segment: 's1' }, 10),
    }),
    ready: text('Break'),
  },
  ...WALL_VIEWS,
  {
    name: 'stop, counting',
    lit: 'one',
    open: showing({ screen: 'wall', minutes: 13, happens: carIn(5) }),
    ready: text('Mandatory stop 1'),
  },
  {
    name: 'stop, GO',
    lit: 'one',
    open: showing({ screen: 'wall', minutes: 13, happens: carIn(50) }),
    ready: (page) => page.getByText('GO', { exact: true }).waitFor(),
  },
  {
    name: 'stop, car out',
    lit: 'none',
    open: showing({ screen: 'stop', minutes: 3 }),
    ready: text('The car is out'),
  },
  ...STOP_VIEWS,
  {
    name: 'driver, who holds it',
    lit: 'none',
    open: showing({ screen: 'driver', role: 'crew', minutes: 3 }),
    ready: text('Who holds'),
  },
  {
    name: 'driver, driving',
    lit: 'none',
    open: showing({ screen: 'driver', role: 'crew', minutes: 3 }),
    ready: heldBy('Ida Quill', 'Left in this stint'),
  },
  {
    name: 'driver, stint ends',
    lit: 'one',
    open: showing({ screen: 'driver', role: 'crew', minutes: 12.5 }),
    ready: heldBy('Ida Quill', 'Left in this stint'),
  },
  {
    name: 'driver, waiting',
    lit: 'none',
    open: showing({ screen: 'driver', role: 'crew', minutes: 3 }),
    ready: heldBy('Tom Wick', 'You drive'),
  },
  {
    name: 'driver, called',
    lit: 'one',
    open: showing({
      screen: 'driver',
      role: 'crew',
      minutes: 3,
      happens: ({ press }) => press('call.1', { person: IDA, words: 'Come in this lap' }),
    }),
    ready: heldBy('Ida Quill', 'Come in this lap'),
  },
  {
    name: 'marshal, on post',
    lit: 'none',
    open: showing({ screen: 'marshal', role: 'crew', minutes: 3 }),
    ready: heldBy('Bea Lorne', 'relieved by'),
  },
  {
    name: 'marshal, relief near',
    lit: 'one',
    open: showing({ screen: 'marshal', role: 'crew', minutes: 12 }),
    ready: heldBy('Bea Lorne', 'relief is due'),
  },
  {
    name: 'log',
    lit: 'none',
    open: showing({ screen: 'log', minutes: 12.5, happens: busy }),
    ready: text('Braid'),
  },
  {
    name: 'log, an entry',
    lit: 'none',
    open: showing({ screen: 'log', minutes: 12.5, happens: busy }),
    ready: async (page) => {
      await page.getByRole('listitem').filter({ hasText: 'Marbles' }).click()
      await page.getByRole('button', { name: 'Move it' }).waitFor()
    },
  },
  {
    name: 'meetings',
    lit: 'none',
    open: async (house) => ({ page: await house.screen('captain', 'Laptop'), path: '/' }),
    ready: text('Running'),
  },
]
