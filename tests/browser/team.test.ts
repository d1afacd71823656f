/**
 * The team's devices, on their own screens.
 *
 * D1  What a tablet kept that was taken out lies before the captain in words: one into the log, one left aside.
 * D2  A phone is checked before green, also while the server is away; the captain sees whether it is ready.
 * D3  A phone takes the wall in two presses and is asked back in one, by the tablet.
 * D4  Without a server the wall cannot be taken, and the phone says so.
 * D5  The log names a device that was never seen together with this screen.
 */
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { enterMeeting, type EnteredMeeting } from './lantern-forty.ts'
import { banner, House, more, PHONE, verb } from './screens.ts'

let house: House
let meeting: EnteredMeeting
beforeEach(async () => {
  house = await House.open()
  meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 3 })
})
afterEach(async () => {
  await house.close()
  expect(house.complaints).toEqual([])
})

it('D1 what a lost tablet kept is taken into the log, or left aside', async () => {
  const lost = await house.screen('pitWall', 'Lost tablet')
  const network = await networkOf(lost)
  await lost.goto(meeting.path('wall'))
  await verb(lost, 'De-slot').waitFor()
  await lost.getByText('clock set').waitFor()
  network.cut = true
  await verb(lost, 'De-slot').click()
  await verb(lost, 'Power is off').click()
  await lost.getByText('2 kept on this device').waitFor()
  const captain = await team()
  await captain.getByRole('button', { name: 'Take out Lost tablet' }).click()
  await captain.getByRole('button', { name: 'Keep Lost tablet' }).click()
  await captain.getByRole('button', { name: 'Take out Lost tablet' }).click()
  await captain.getByRole('button', { name: 'Really take out Lost tablet' }).click()
  await captain.getByText('Taken out: Lost tablet').waitFor()
  network.cut = false
  // A connection that was begun while the network was cut is given up after twenty seconds.
  await lost.getByText(/taken out of the team/).waitFor({ timeout: 40_000 })

  const tray = captain.getByRole('region', { name: /^Lost tablet/ })
  await expect.poll(() => tray.getByRole('listitem').count()).toBe(2)
  await tray.getByRole('button', { name: /^Take into the log: De-slot/ }).click()
  await tray.getByText('in the log').waitFor()
  await tray.getByRole('button', { name: /^Leave aside: Power is off/ }).click()
  await tray.getByText('left aside').waitFor()

  await captain.getByRole('link', { name: 'Log' }).click()
  const line = captain.getByRole('listitem').filter({ hasText: 'De-slot' })
  await line.getByText('Lost tablet').waitFor()
  expect(await captain.getByRole('listitem').filter({ hasText: 'Power is off' }).count()).toBe(0)
})

it('D2 a phone is checked, and the captain sees that it is ready', async () => {
  const phone = await house.screen('crew', 'Ida’s phone', { viewport: PHONE })
  await heldBy(phone, 'Tom Wick')
  await phone.getByRole('link', { name: 'Check this device' }).click()
  await phone.getByText('Not ready:').waitFor()
  const captain = await team()
  const row = captain.getByRole('listitem').filter({ hasText: 'Ida’s phone' })
  await row.getByText('not checked yet').waitFor()
  await row.getByText('held by Tom Wick').waitFor()

  await house.server.kill()
  await phone.getByText(/no server/).waitFor()
  await phone.getByRole('button', { name: 'Play a tone' }).click()
  await phone.getByRole('button', { name: 'Heard it' }).click()
  await phone.getByText('heard', { exact: true }).waitFor()
  await phone.getByRole('button', { name: 'Shake it' }).click()
  await phone.getByRole('button', { name: 'Try to keep it lit' }).click()
  await phone.getByText(/^the screen (stays lit|may go dark)/).waitFor()
  await house.plugInAgain()
  await row.getByText(/^(ready|not ready)/).waitFor()
  expect(await row.innerText()).not.toContain('sound')
  expect(await row.innerText()).toContain('clock set')
  // What was found is still known after a reload.
  await phone.reload()
  await phone.getByText('heard', { exact: true }).waitFor()
})

it('D3 a phone takes the wall, and the tablet takes it back', async () => {
  const tablet = await house.screen('pitWall', 'Wall tablet')
  await tablet.goto(meeting.path('wall'))
  await verb(tablet, 'Car in').waitFor()
  const phone = await house.screen('crew', 'A phone', { viewport: PHONE })
  await heldBy(phone, 'Tom Wick')
  expect(await phone.getByRole('button', { name: 'Take the wall' }).count()).toBe(0)
  const captain = await team()
  await captain.getByRole('button', { name: 'A phone: may take the wall' }).click()

  await phone.getByRole('button', { name: 'Take the wall' }).click()
  await phone.getByRole('button', { name: 'Yes, until the tablet is back' }).click()
  await verb(phone, 'Car in').waitFor()
  await phone.getByText('This device has the wall until the tablet is back').waitFor()
  await captain.getByText('Wall is also on Tom Wick’s phone').waitFor()
  await verb(phone, 'Power is off').click()
  await banner(tablet).getByText('Power off').waitFor()

  await tablet.getByText('Wall is also on Tom Wick’s phone').waitFor()
  await tablet.getByRole('button', { name: /^Take the wall back/ }).click()
  await phone.getByText('This device no longer has the wall: it is crew again.').waitFor()
  await tablet.getByText('Wall is also on').waitFor({ state: 'detached' })
  await verb(phone, 'Power is on').waitFor({ state: 'detached' })
  await verb(tablet, 'Power is on').waitFor()
})

it('D4 without a server the wall cannot be taken', async () => {
  const phone = await house.screen('crew', 'A phone', { viewport: PHONE })
  await heldBy(phone, 'Tom Wick')
  const captain = await team()
  await captain.getByRole('button', { name: 'A phone: may take the wall' }).click()
  await phone.getByRole('button', { name: 'Take the wall' }).waitFor()
  await house.server.kill()
  await phone.getByRole('button', { name: 'Take the wall' }).click()
  await phone.getByRole('button', { name: 'Yes, until the tablet is back' }).click()
  await phone.getByText(/can be taken only while the server answers/).waitFor()
  await phone
    .getByText(/Tom Wick/)
    .first()
    .waitFor()
})

it('D5 the log names a device that was never seen together with this screen', async () => {
  const wall = await house.screen('pitWall', 'Wall tablet')
  await wall.goto(meeting.path('wall'))
  await more(wall, 'Log', 'link')
  const line = wall.getByRole('listitem').filter({ hasText: 'Green' })
  await line.getByText('Captain’s laptop').waitFor()
})

async function team(): Promise<Page> {
  const captain = await house.screen('captain', 'Captain’s tablet')
  await captain.goto(meeting.path('team'))
  await captain.getByRole('heading', { name: 'Devices' }).waitFor()
  return captain
}

async function heldBy(phone: Page, name: string): Promise<void> {
  await phone.goto(meeting.path('driver'))
  await phone.getByRole('button', { name }).click()
}

/** Everything between this page and the server goes through here, and nothing while it is cut. */
async function networkOf(page: Page): Promise<{ cut: boolean }> {
  const network = { cut: false }
  await page.routeWebSocket(/socket\.io/, (socket) => {
    const server = socket.connectToServer()
    socket.onMessage((message) => {
      if (!network.cut) server.send(message)
    })
    server.onMessage((message) => {
      if (!network.cut) socket.send(message)
    })
  })
  return network
}
