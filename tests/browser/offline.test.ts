/**
 * The server is gone, killed where it stands as by a pulled plug; or it is slow.
 *
 * O1  A screen says so within four seconds, and goes on counting.
 * O2  Every race screen and the log open from another one, also where the browser keeps no program.
 * O3  A press is shown as kept on this device, and as saved once the server has it: exactly once.
 * O4  On localhost and over HTTPS a reload works too, and what was pressed is still there.
 * O5  A log that comes slowly is waited for: a race that runs is never shown as one that has not begun.
 */
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { entriesPageSchema } from '@pitlamp/contract'
import { enterMeeting, type EnteredMeeting } from './lantern-forty.ts'
import { banner, figureIn, House, more, verb } from './screens.ts'

const SAID_WITHIN_MS = 4_000
const TIME_MS = 120_000

let house: House
let meeting: EnteredMeeting
beforeEach(async () => {
  house = await House.open()
  meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 5 })
})
afterEach(async () => {
  await house.close()
  expect(house.complaints).toEqual([])
})

it('O1 a screen says that the server is silent, and goes on counting', async () => {
  const wall = await open('pitWall', 'wall')
  await banner(wall).getByText('Green', { exact: true }).waitFor()
  await wall.getByText('clock set').waitFor()

  await house.server.kill()
  const goneAt = performance.now()
  await wall.getByText(/no server/).waitFor()
  expect(performance.now() - goneAt).toBeLessThan(SAID_WITHIN_MS)
  const left = await figureIn(banner(wall))
  await expect.poll(() => figureIn(banner(wall))).toBeLessThan(left)
})

it('O2 every race screen and the log open from another one', { timeout: TIME_MS }, async () => {
  const page = await house.screen('pitWall', 'Wall tablet')
  // As over plain HTTP: the browser keeps no program of ours.
  await page.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, 'serviceWorker'))
  await page.goto(meeting.path('log'))
  await page.getByText('6 entries').waitFor()
  await page.waitForLoadState('networkidle')
  await house.server.kill()

  const screens = page.getByRole('navigation', { name: 'Screens of this meeting' })
  await screens.getByRole('link', { name: 'Driver' }).click()
  await page.getByRole('button', { name: 'Ida Quill' }).click()
  await page.getByText('Left in this stint').waitFor()
  await page.goBack()
  await screens.getByRole('link', { name: 'Marshal' }).click()
  await page.getByText('At the controller').waitFor()
  await page.goBack()
  await screens.getByRole('link', { name: 'Pit wall' }).click()
  await verb(page, 'Car in').click()
  await page.getByText(/Stop 1|Mandatory stop 1/).waitFor()
  await verb(page, 'Car out').click()
  await more(page, 'Log', 'link')
  await page
    .getByRole('listitem')
    .filter({ hasText: 'Car out' })
    .getByText('kept on this device')
    .waitFor()
})

it('O3, O4 a press outlives a reload and is saved once', { timeout: TIME_MS }, async () => {
  const page = await open('pitWall', 'driver')
  await page.getByRole('button', { name: 'Ida Quill' }).click()
  await page.goto(meeting.path('wall'))
  await verb(page, 'De-slot').waitFor()
  await page.evaluate(() => navigator.serviceWorker.ready)

  await house.server.kill()
  await verb(page, 'De-slot').click()
  const said = page.getByRole('listitem').filter({ hasText: 'De-slot' })
  await said.getByText('kept on this device').waitFor()
  await page.getByText('1 kept on this device').waitFor()

  for (const screen of ['wall', 'stop', 'driver', 'marshal', 'log']) {
    await page.goto(meeting.path(screen))
    await page.getByText('1 kept on this device').waitFor()
    expect(await page.title()).toMatch(/· Lantern Forty$/)
  }
  const logged = page.getByRole('listitem').filter({ hasText: 'De-slot' })
  await logged.getByText('kept on this device').waitFor()

  await house.plugInAgain()
  await page.getByText('all saved').waitFor({ timeout: 30_000 })
  await logged.getByText('kept on this device').waitFor({ state: 'detached' })
  expect(await logged.count()).toBe(1)
  expect(await savedIncidents()).toBe(1)
})

it('O5 a running race is not shown as one that has not begun', async () => {
  const page = await house.screen('pitWall', 'Wall tablet')
  await page.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, 'serviceWorker'))
  await page.route(/\/entries\?after=/, async (route) => {
    await new Promise((done) => setTimeout(done, 1_000))
    await route.continue()
  })
  await page.goto(meeting.path('wall'))
  await banner(page).waitFor()
  expect(await banner(page).innerText()).toContain('Green')
})

async function savedIncidents(): Promise<number> {
  const captain = await house.captain()
  const page = await captain.call('GET', `/api/meetings/${meeting.id}/entries?after=0`)
  return entriesPageSchema.parse(page).entries.filter(({ kind }) => kind === 'incident.1').length
}

async function open(role: 'pitWall' | 'crew', screen: string): Promise<Page> {
  const page = await house.screen(role, 'Wall tablet')
  await page.goto(meeting.path(screen))
  return page
}
