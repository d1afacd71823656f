/** The pit wall with everything on it, and each of its sheets. */
import type { Page } from 'playwright-core'
import { BEA, TOM } from './lantern-forty.ts'
import { verb } from './screens.ts'
import { showing, type Happens, type View } from './view.ts'
import { adoptWhole } from './whole-race.ts'

/** A compulsory repair, three more faults, a penalty to serve, a call that passed on, somebody late, a standing. */
const crowded: Happens = async (meeting) => {
  const { press } = meeting
  await adoptWhole(meeting)
  const lines = [
    { place: 2, entrant: 'Tallow Works', laps: 49 },
    { place: 3, entrant: 'We', laps: 47, ours: true },
    { place: 4, entrant: 'Fen Lights', laps: 45 },
  ]
  const standing = { standing: 'provisional', scope: 'whole' } as const
  await press('classification.1', { ...standing, asAtClockMs: 470_000, lines }, 40)
  await press('faultNoted.1', { fault: 'Lights' }, 200)
  await press('faultNoted.1', { fault: 'Braid' }, 150)
  const wing = await press('faultNoted.1', { fault: 'Rear wing' }, 12)
  await press('faultNoted.1', { fault: 'Body loose' }, 100)
  await press('penalty.1', { what: 'stopAndGo', heldMs: 10_000, scope: 'race' }, 20)
  await press('call.1', { person: TOM, words: 'Come to the pit box' }, 75)
  await press('call.1', { person: BEA, words: 'Time to get up', dueAt: inMinutes(15) })
  await press('availability.1', { person: TOM, state: 'away', until: inMinutes(20) }, 5)
  return wing
}

/** The meetings of these tests stand where the real clock does. */
function inMinutes(minutes: number): number {
  return Date.now() + minutes * 60_000
}

const atEight = showing({ screen: 'wall', minutes: 8, happens: crowded })
const quiet = showing({ screen: 'wall', minutes: 6, happens: adoptWhole })
const waiting = showing({ screen: 'wall', happens: adoptWhole })
const between = showing({
  screen: 'wall',
  minutes: 40,
  happens: async (meeting) => {
    await adoptWhole(meeting)
    await meeting.press('faultNoted.1', { fault: 'Lights' }, 200)
    const clearance = { quantity: 'Clearance', unit: 'mm', valueMilli: 1_050 } as const
    await meeting.press('measured.1', clearance, 100)
    await meeting.press('segmentEnd.1', { segment: 's1' }, 10)
    await meeting.press('workTicked.1', { work: 'Oil the bearings', done: true })
  },
})

const sheet = (page: Page, name: string | RegExp) => page.getByRole('dialog', { name }).waitFor()
const byVerb = (word: string, then: string | RegExp) => async (page: Page) => {
  await verb(page, word).click()
  await sheet(page, then)
}

export const WALL_VIEWS: readonly View[] = [
  {
    name: 'wall, crowded',
    lit: 'one',
    open: atEight,
    ready: (page) => page.getByText('The rule leaves no choice').waitFor(),
  },
  {
    name: 'wall, race control said',
    lit: 'one',
    open: atEight,
    ready: byVerb('Race control said', 'Race control said'),
  },
  {
    name: 'wall, standing',
    lit: 'none',
    open: quiet,
    ready: async (page) => {
      await page.getByRole('button', { name: 'not read' }).click()
      await sheet(page, 'What the venue’s screen shows')
    },
  },
  {
    name: 'wall, person',
    lit: 'none',
    open: quiet,
    ready: async (page) => {
      await page.getByRole('button', { name: 'Bea Lorne, post 2' }).click()
      await sheet(page, 'Bea Lorne')
    },
  },
  {
    name: 'wall, stay out',
    lit: 'none',
    open: quiet,
    ready: async (page) => {
      await page.getByRole('button', { name: 'Stay out' }).click()
      await page.getByRole('button', { name: 'Stay out 5 min more' }).waitFor()
    },
  },
  {
    name: 'wall, fit a part',
    lit: 'one',
    open: atEight,
    ready: async (page) => {
      await page.getByRole('button', { name: 'Fit a part' }).first().click()
      await sheet(page, 'Fit a part')
    },
  },
  {
    name: 'wall, energy',
    lit: 'none',
    open: quiet,
    ready: async (page) => {
      await page.getByRole('button', { name: 'Read', exact: true }).click()
      await sheet(page, 'Energy')
    },
  },
  {
    name: 'wall, who is here',
    lit: 'none',
    open: waiting,
    ready: async (page) => {
      await byVerb('Who is here', 'Who is here')(page)
      const tom = page.getByRole('group', { name: 'Tom Wick', exact: true })
      await tom.getByRole('button', { name: 'late' }).click()
      await page.getByRole('button', { name: '20 min' }).waitFor()
    },
  },
  { name: 'wall, lane', lit: 'none', open: waiting, ready: byVerb('Lane', 'Which lane') },
  { name: 'wall, note', lit: 'none', open: waiting, ready: byVerb('Note', 'Note') },
  { name: 'wall, measure', lit: 'one', open: between, ready: byVerb('Measure', 'Measure') },
  { name: 'wall, work', lit: 'one', open: between, ready: byVerb('Work', 'Work') },
]
