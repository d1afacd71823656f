/**
 * The laptop dies in a race.
 *
 * C1  With its server dead a screen writes the meeting into a file, with what it could not send.
 * C2  Another server is given the file on its empty Meetings screen, and the race goes on there where it was.
 * C3  A file that is no copy is named, and nothing is brought in.
 */
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { join } from '../device.ts'
import { startServer, type RunningServer } from '../running-server.ts'
import { enterMeeting, type EnteredMeeting } from './lantern-forty.ts'
import { findings } from './look.ts'
import { banner, figureIn, House, more, PHONE, TABLET, verb } from './screens.ts'

const TIME_MS = 180_000

let house: House
let meeting: EnteredMeeting
let another: RunningServer
beforeEach(async () => {
  house = await House.open()
  meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 5 })
  another = await startServer()
})
afterEach(async () => {
  await house.close()
  await another.stop()
  expect(house.complaints).toEqual([])
})

it('C1, C2, C3 goes on from what the wall had', { timeout: TIME_MS }, async () => {
  const wall = await house.screen('pitWall', 'Wall tablet')
  await wall.goto(meeting.path('wall'))
  await verb(wall, 'De-slot').waitFor()
  // All of the program is here then.
  await wall.evaluate(() => navigator.serviceWorker.ready)
  await house.server.kill()
  await verb(wall, 'De-slot').click()
  await wall.getByText('1 kept on this device').waitFor()
  const file = await copyBy(wall)

  const laptop = await captainOfAnother()
  await laptop.goto('/')
  await laptop.getByText('No meeting yet').waitFor()
  const chosen = laptop.getByLabel(/^Files that screens wrote/)
  await chosen.setInputFiles({
    ...{ name: 'shopping.json', mimeType: 'application/json' },
    buffer: Buffer.from('{"milk":2}'),
  })
  await laptop.getByRole('alert').getByText('shopping.json: nothing was brought in').waitFor()
  expect(await laptop.getByRole('button', { name: 'Bring it in' }).count()).toBe(0)

  await chosen.setInputFiles(file)
  // Four documents, a handover, the green, and the press that was not sent.
  await laptop.getByText(/Lantern Forty: 7 entries, 1 of them on a device only/).waitFor()
  expect(await findings(laptop)).toEqual([])
  await laptop.getByRole('button', { name: 'Bring it in' }).click()
  await laptop.getByText(/Lantern Forty is here: 7 entries brought in/).waitFor()
  await laptop.getByText(/Every device joins again/).waitFor()
  await chosen.setInputFiles(file)
  await laptop.getByRole('button', { name: 'Bring it in' }).click()
  await laptop.getByText('7 entries were here already.').waitFor()
  await laptop.setViewportSize(PHONE)
  expect(await findings(laptop)).toEqual([])
  await laptop.setViewportSize(TABLET)

  await laptop.goto(meeting.path('log'))
  const logged = laptop.getByRole('listitem').filter({ hasText: 'De-slot' })
  await logged.getByText('Wall tablet').waitFor()
  expect(await logged.count()).toBe(1)
  await laptop.goto(meeting.path('wall'))
  await wall.goBack()
  await laptop.getByText('clock set').waitFor()
  // They are read one after the other, and each turns over once a second.
  const [theirs, ours] = [await figureIn(banner(wall)), await figureIn(banner(laptop))]
  expect(Math.abs(theirs - ours)).toBeLessThanOrEqual(2)
  await laptop.goto(meeting.path('rules'))
  const fields = laptop.getByRole('textbox')
  const written = () =>
    fields.evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value))
  await expect.poll(written).toContain('The Old Ropeworks')
})

/** One press on the log, and the file it leaves where the browser keeps what is downloaded. */
async function copyBy(page: Page): Promise<string> {
  await more(page, 'Log', 'link')
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Write a copy of this meeting' }).click(),
  ])
  expect(download.suggestedFilename()).toMatch(/^pitlamp-lantern-forty-wall-tablet-.*\.json$/)
  await page.getByText(/^Written, as of .*: 7 entries, 1 of them on a device only/).waitFor()
  expect(await findings(page)).toEqual([])
  return download.path()
}

async function captainOfAnother(): Promise<Page> {
  const device = await join(another.url, await another.captainCode(), 'Another laptop')
  const page = await house.blank({ baseURL: another.url })
  const [name = '', value = ''] = (device.headers['cookie'] ?? '').split('=')
  await page.context().addCookies([{ name, value, url: another.url }])
  return page
}
