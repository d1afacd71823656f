/**
 * A stop, the time between two segments and the end, pressed through.
 *
 * T1  Every verb of a stop is one press, by thumb or by key, and each is in the log.
 * T2  On a phone alerts never push the work down while the car is in.
 * T3  Work that can hurt is not offered while the minimum counts, says why, and is once it is over.
 * T4  How the car left is said for a while, with what it costs, on the wall's side too.
 * T5  Between segments work is ticked, and Green is one press; the wall leads there.
 * T6  After the flag every step is one press, figures by pad.
 * T7  What the captain chose reaches the devices; a muted screen shows that it is.
 * T8  What is to be done between segments is written down on the Car screen, in order.
 */
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { draftSchema, entriesPageSchema } from '@pitlamp/contract'
import { adoption, enterMeeting, LANTERN_FORTY, type EnteredMeeting } from './lantern-forty.ts'
import { House, PHONE, verb } from './screens.ts'
import { adoptWhole } from './whole-race.ts'

const TIME_MS = 90_000

let house: House
beforeAll(async () => {
  house = await House.open()
})
afterAll(() => house.close())
afterEach(() => expect(house.complaints.splice(0)).toEqual([]))

it('T1, T4 a stop is pressed through by keys', { timeout: TIME_MS }, async () => {
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 12.9 })
  await adoptWhole(meeting)
  await adoptEarly(meeting)
  await meeting.press('faultNoted.1', { fault: 'Rear wing' }, 5)
  await meeting.press('faultNoted.1', { fault: 'Braid' }, 4)
  const page = await opened(meeting, 'stop')
  await awake(page, 'Car in')
  await page.keyboard.press('1')
  await page.getByText('Mandatory stop 1').waitFor()

  await page.getByRole('button', { name: 'Start: Rear wing' }).click()
  await page.getByText('being mended').waitFor()
  // Its meaning sleeps for a moment; then it is the first job's.
  await awake(page, 'Job done')
  await page.keyboard.press('2')
  await page.getByRole('checkbox', { name: 'Done: Rear wing', checked: true }).waitFor()
  await awake(page, 'Leave this job')
  await page.keyboard.press('3')
  await page.getByText('not in this stop').waitFor()
  await awake(page, 'Power is off')
  await page.keyboard.press('4')
  await awake(page, 'Power is on')
  await page.getByText('The minimum stands until power is on').waitFor()
  await page.keyboard.press('4')
  await awake(page, 'Car out')
  await page.keyboard.press('6')
  await page.getByText(/^Left \d+(\.\d)? s early/).waitFor()
  await page.getByText('a stop-and-go (5.6)').waitFor()
  expect(await kinds(meeting, 'stopIn.1')).toEqual([
    ...['stopIn.1', 'repairStarted.1', 'repairFinished.1'],
    ...['trackCall.1', 'powerOn.1', 'stopOut.1'],
  ])
})

it('T2 on a phone alerts lie over the foot of the list', { timeout: TIME_MS }, async () => {
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 38.9 })
  await meeting.press('stopIn.1', { moment: 'stopped', planned: 't2' }, 3)
  await meeting.press('faultNoted.1', { fault: 'Braid' }, 2)
  const page = await opened(meeting, 'stop')
  await page.setViewportSize(PHONE)
  const list = page.getByRole('region', { name: 'Work in this stop' })
  const alerts = page.getByRole('list', { name: 'Alerts' })
  await alerts.waitFor()
  const withAlerts = await list.boundingBox()
  const box = await alerts.boundingBox()
  const bar = await page.getByRole('toolbar').boundingBox()
  expect((box?.y ?? NaN) + (box?.height ?? NaN)).toBeLessThanOrEqual(bar?.y ?? NaN)
  for (const ok of await alerts.getByRole('button').all()) await ok.click()
  await alerts.waitFor({ state: 'detached' })
  expect((await list.boundingBox())?.y).toBe(withAlerts?.y)
})

it('T3 hot work waits for the end of the minimum', { timeout: TIME_MS }, async () => {
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 13 })
  await meeting.press('stopIn.1', { moment: 'stopped', planned: 't1' }, 25)
  const page = await opened(meeting, 'stop')
  await awake(page, 'More work')
  await verb(page, 'More work').click()
  const sheet = page.getByRole('dialog', { name: 'More work in this stop' })
  await sheet.getByRole('button', { name: /Solder a wire/ }).click()
  const done = page.getByRole('checkbox', { name: 'Done: Solder a wire' })
  await page.getByText('the captain has not allowed').waitFor()
  await page.getByText('Iron in its stand').waitFor()
  expect(await done.isDisabled()).toBe(true)
  await page.getByText('GO', { exact: true }).waitFor({ timeout: 40_000 })
  await expect.poll(() => done.isDisabled()).toBe(false)
  await page.getByText('Iron in its stand').waitFor()
  await awake(page, 'Job done')
  await verb(page, 'Job done').click()
  await expect.poll(() => kinds(meeting, 'stopIn.1')).toContain('workTicked.1')
})

it('T5 between segments: ticks in order, then Green', { timeout: TIME_MS }, async () => {
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 41 })
  await adoptWhole(meeting)
  await meeting.press('segmentEnd.1', { segment: 's1' }, 30)
  const page = await opened(meeting, 'wall')
  await page.getByRole('link', { name: 'Between segments' }).click()
  await page.getByText('What to do, in this order').waitFor()
  await page.getByText(/^Planned green about/).waitFor()
  await page.getByRole('checkbox', { name: 'Done: Clean the track side' }).click()
  await page.getByRole('checkbox', { name: 'Done: Clean the track side', checked: true }).waitFor()
  await awake(page, 'Green')
  await page.keyboard.press('1')
  await page.getByText('No break just now').waitFor()
  // Shown at once, and then on its way to the server.
  await expect
    .poll(() => kinds(meeting, 'segmentEnd.1'))
    .toEqual([...['segmentEnd.1', 'workTicked.1', 'green.1']])
})

it('T6 after the flag, step by step', { timeout: TIME_MS }, async () => {
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 92 })
  const captain = { ...LANTERN_FORTY.plan.captain, protestMs: 1_800_000 }
  const plan = { ...LANTERN_FORTY.plan, captain }
  await meeting.press('adopted.1', { ...adoption('plan', plan), version: 2 })
  await meeting.press('segmentEnd.1', { segment: 's1' }, 3_000)
  await meeting.press('green.1', { segment: 's2' }, 2_900)
  await meeting.press('segmentEnd.1', { segment: 's2' }, 500)
  const page = await opened(meeting, 'finish')
  const press = (name: string) => page.getByRole('button', { name, exact: true }).click()
  await press('Passed')
  await page.getByText(/^passed \d\d:\d\d$/).waitFor()
  await page.keyboard.type('924')
  await press('The scales show this')
  await page.getByText(/^92\.4 g/).waitFor()
  for (const [field, typed] of [
    ['Place', '2'],
    ['Laps', '405'],
    ['Section', '20'],
  ] as const) {
    await page.getByRole('button', { name: new RegExp(`^${field}`) }).click()
    for (const digit of typed) await press(digit)
  }
  await press('Provisional result')
  await page.getByText(/^Provisional: place/).waitFor()
  await page.getByText(/^until \d\d:\d\d$/).waitFor()
  // While protests may come it is opened by hand only.
  await press('Open: Official result')
  await press('Official as it stands')
  await page.getByText(/^Official: place/).waitFor()
  await press('The car is released')
  await page.locator('[data-step=released].done').waitFor()
  await expect
    .poll(async () => (await kinds(meeting, 'scrutineering.1')).slice(1))
    .toEqual([...['measured.1', 'classification.1', 'classification.1', 'released.1']])
})

it('T7 the captain chooses the moments, and the mute shows', { timeout: TIME_MS }, async () => {
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 3 })
  const page = await house.screen('captain', 'Laptop')
  await page.goto(meeting.path('rotation'))
  const chips = page.getByRole('group', { name: 'The devices speak up before it is due by' })
  await chips.getByRole('button', { name: '10 min' }).click()
  await chips.getByRole('button', { name: '10 min', pressed: false }).waitFor()
  await page.getByLabel('A call nobody answers is repeated every').fill('30 s')
  await page.getByRole('button', { name: 'Adopt: holds from now' }).click()
  await expect
    .poll(() => captainsOwn(meeting))
    .toMatchObject({
      alertsMs: [300_000, 120_000, 60_000, 0],
      callRepeatMs: 30_000,
    })
  await page.goto(meeting.path('wall'))
  await awake(page, 'More')
  await verb(page, 'More').click()
  const sound = page.getByRole('button', { name: /^Sound/ })
  await sound.click()
  if ((await sound.count()) > 0) await sound.click()
  await page.keyboard.press('Escape')
  await page.getByText('muted', { exact: true }).first().waitFor()
})

it('T8 work between segments is kept in order', { timeout: TIME_MS }, async () => {
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 3 })
  const page = await house.screen('captain', 'Laptop')
  await page.goto(meeting.path('car'))
  for (const [index, line] of [
    [1, 'Oil axles'],
    [2, 'Brush braid'],
  ] as const) {
    await page.getByRole('button', { name: 'Add work' }).click()
    const field = page.getByLabel(`Work ${index} between segments`)
    await field.fill(line)
    await field.press('Tab')
  }
  await page.getByRole('button', { name: 'Earlier: Brush braid' }).click()
  await expect
    .poll(() => draft(meeting, 'car'))
    .toMatchObject({ betweenWork: ['Brush braid', 'Oil axles'] })
})

async function draft(meeting: EnteredMeeting, document: string): Promise<unknown> {
  const captain = await house.captain()
  const path = `/api/meetings/${meeting.id}/documents/${document}`
  return draftSchema.parse(await captain.call('GET', path)).content
}

/** Of the plan adopted last. */
async function captainsOwn(meeting: EnteredMeeting): Promise<unknown> {
  const captain = await house.captain()
  const path = `/api/meetings/${meeting.id}/entries?after=0`
  const { entries } = entriesPageSchema.parse(await captain.call('GET', path))
  const plans = entries
    .filter(({ kind }) => kind === 'adopted.1')
    .map(({ body }) => JSON.parse(body) as { document: string; content: { captain?: unknown } })
    .filter(({ document }) => document === 'plan')
  return plans.at(-1)?.content.captain
}

async function adoptEarly({ press }: EnteredMeeting): Promise<void> {
  const early = {
    ...{ id: 'early', kind: 'penalty', clause: '5.6' },
    value: { for: 'Stop left early', is: 'stopAndGo', per: 'occurrence', scope: 'race' },
  } as const
  const rules = { ...LANTERN_FORTY.rules, rules: [...LANTERN_FORTY.rules.rules, early] }
  await press('adopted.1', { ...adoption('rules', rules), version: 3 })
}

async function opened(meeting: EnteredMeeting, screen: string): Promise<Page> {
  const page = await house.screen('pitWall', 'Wall tablet')
  await page.goto(meeting.path(screen))
  return page
}

/** A verb that has just changed its meaning sleeps. */
async function awake(page: Page, word: string): Promise<void> {
  const button = verb(page, word)
  await button.waitFor()
  await expect.poll(() => button.getAttribute('aria-disabled')).toBeNull()
}

/** What was recorded, from the first of this kind on. */
async function kinds(meeting: EnteredMeeting, from: string): Promise<readonly string[]> {
  const captain = await house.captain()
  const path = `/api/meetings/${meeting.id}/entries?after=0`
  const { entries } = entriesPageSchema.parse(await captain.call('GET', path))
  const all = entries.map(({ kind }) => kind)
  return all.slice(all.indexOf(from))
}
