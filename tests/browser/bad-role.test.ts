/**
 * Devices that may not do everything.
 *
 * B1  A crew phone that opens the wall sees it all and finds no verb it may not press.
 * B2  A viewer's device sees everything and finds only the way to other screens.
 * B3  Rules, Crew, Car and Team on a crew phone say whose they are, and change nothing.
 * B4  A device taken out of the team is told at once, and keeps what it has on show.
 * B5  A captain who makes a viewer a pit wall gives it the verbs without a reload.
 */
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { enterMeeting, type EnteredMeeting } from './lantern-forty.ts'
import { banner, House, verb } from './screens.ts'

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

it('B1, B3 a crew phone finds no verb that it may not press', async () => {
  const phone = await house.screen('crew', 'Phone')
  await phone.goto(meeting.path('wall'))
  await verb(phone, 'De-slot').waitFor()
  expect(await verbs(phone)).toEqual(['Change', 'De-slot', 'Fault', 'More'])

  await meeting.press('stopIn.1', { moment: 'stopped', planned: 't1' })
  await phone.getByText(/Mandatory stop 1/).waitFor()
  expect(await verbs(phone)).toEqual(['More work', 'Note'])

  for (const screen of ['rules', 'crew', 'car']) {
    await phone.goto(meeting.path(screen))
    await phone.getByRole('alert').getByText('The captain lays this down').waitFor()
    expect(await phone.getByRole('button', { name: /^Adopt/ }).count()).toBe(0)
  }
  await phone.goto(meeting.path('team'))
  await phone.getByRole('alert').getByText('Only a captain’s device').waitFor()
  expect(await phone.getByRole('button', { name: 'A code to read out' }).count()).toBe(0)
})

it('B2, B5 a viewer sees everything, and gets the verbs once it is a pit wall', async () => {
  const page = await house.screen('viewer', 'Screen in the corner')
  await page.goto(meeting.path('wall'))
  await banner(page).getByText('Green', { exact: true }).waitFor()
  await page.getByText('Ida Quill').first().waitFor()
  expect(await verbs(page)).toEqual(['More'])
  await verb(page, 'More').click()
  const sheet = page.getByRole('dialog', { name: 'More' })
  await sheet.getByRole('link', { name: 'Log' }).waitFor()
  expect(await sheet.getByRole('group', { name: 'More' }).getByRole('button').count()).toBe(0)

  const captain = await house.screen('captain', 'Captain’s tablet')
  await captain.goto(meeting.path('team'))
  await captain.getByLabel('Screen in the corner: role').selectOption('Pit wall')
  await verb(page, 'Car in').waitFor()
})

it('B4 a device that is taken out is told at once', async () => {
  const phone = await house.screen('crew', 'Lost phone')
  await phone.goto(meeting.path('wall'))
  await verb(phone, 'De-slot').waitFor()
  const captain = await house.screen('captain', 'Captain’s tablet')
  await captain.goto(meeting.path('team'))
  await captain.getByRole('button', { name: 'Take out Lost phone' }).click()
  await captain.getByRole('button', { name: 'Really take out Lost phone' }).click()

  await phone.getByText(/taken out of the team/).waitFor()
  await phone.getByRole('link', { name: 'Join again' }).waitFor()
  await banner(phone).getByText('Green', { exact: true }).waitFor()
  await captain.getByText('Taken out: Lost phone').waitFor()
})

async function verbs(page: Page): Promise<readonly string[]> {
  const buttons = page.getByRole('toolbar', { name: 'What happened' }).getByRole('button')
  const texts = await buttons.allInnerTexts()
  return texts.map((text) => text.split('\n')[0] ?? '')
}
