/**
 * A short meeting, on the screens of the people who run it.
 *
 * M1  A captain opens the printed link, lays a meeting down and adopts it; a tablet and a phone
 *     come in through codes of the Team screen.
 * M2  The wall runs it from green to flag, each press with one verb; undo takes the last one back from
 *     its own place.
 * M3  A stop has the wall to itself: the minimum counts down, then it says GO; the change goes with the car.
 * M4  The driver's phone counts down as wide as it is, and follows the change.
 * M5  A call fills the phone until the wall marks it heard.
 * M6  The marshal's page says post, until when, and who relieves.
 * M7  The log shows every entry; moves one to when it happened, voids it with a reason, restores it.
 */
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Locator, Page } from 'playwright-core'
import { enterMeeting } from './lantern-forty.ts'
import { layDown } from './lay-down.ts'
import { banner, figureIn, House, more, PHONE, TABLET, verb } from './screens.ts'

let house: House
beforeEach(async () => {
  house = await House.open()
})
afterEach(async () => {
  await house.close()
  expect(house.complaints).toEqual([])
})

it('M1–M4 runs from the printed link to the flag', { timeout: 120_000 }, async () => {
  const captain = await house.blank({ viewport: TABLET })
  await captain.goto(`/join#${await house.server.captainCode()}`)
  await captain.getByLabel('What this device is called').fill('Captain’s tablet')
  await captain.getByRole('button', { name: 'Join', exact: true }).click()
  await captain.getByLabel('Its name').fill('Harbour Lights')
  await captain.getByRole('button', { name: 'Make it' }).click()
  await layDown(captain)
  await captain.getByRole('button', { name: 'Adopt for the meeting' }).click()
  await captain.getByText('The meeting goes by what stands here.').waitFor()
  await captain.getByText('Adopted: saved.').waitFor()

  const { wall, phone } = await joinFromTeam(captain)
  await runFirstSegment(wall, phone)
  await runSecondSegment(wall)
  await phone.getByText('Finished').waitFor()
})

/** M1: the pit wall by a code read out, the phone by the link in the picture. */
async function joinFromTeam(captain: Page): Promise<{ wall: Page; phone: Page }> {
  await captain.getByRole('link', { name: 'Team' }).click()
  await captain.getByRole('button', { name: 'A code to read out' }).click()
  const typed = captain.locator('p').filter({ hasText: 'one pit wall device' }).locator('b')
  const wall = await house.blank({ viewport: TABLET })
  await wall.goto('/join')
  await wall.getByLabel('Code').fill(await typed.innerText())
  await nameAndJoin(wall, 'Wall tablet')
  await captain.getByRole('button', { name: 'Crew', exact: true }).click()
  await captain.getByRole('img', { name: 'Code to scan, for Crew' }).waitFor()
  const link = await captain.getByRole('link', { name: 'Open the link' }).getAttribute('href')
  const phone = await house.blank({ viewport: PHONE, hasTouch: true, isMobile: true })
  await phone.goto(link ?? '')
  await nameAndJoin(phone, 'Ida’s phone')
  await phone.getByRole('button', { name: 'Ida Quill' }).click()
  await captain.getByText('Ida’s phone').waitFor()
  return { wall, phone }
}

async function nameAndJoin(page: Page, name: string): Promise<void> {
  await page.getByLabel('What this device is called').fill(name)
  await page.getByRole('button', { name: 'Join', exact: true }).click()
}

async function runFirstSegment(wall: Page, phone: Page): Promise<void> {
  await verb(wall, 'Green segment 1').waitFor()
  await more(wall, 'Change')
  await wall.getByRole('button', { name: 'Record the change' }).click()
  await verb(wall, 'Green').click()
  await banner(wall).getByText('Green', { exact: true }).waitFor()
  await phone.getByText('Ida Quill, driving').waitFor()
  const left = await figureIn(phone.getByRole('main'))
  await expect.poll(() => figureIn(phone.getByRole('main'))).toBeLessThan(left)

  await verb(wall, 'De-slot').click()
  await wall.getByText(/De-slot recorded/).waitFor()
  await wall.getByRole('button', { name: 'Undo', exact: true }).click()
  await wall.getByRole('deletion').filter({ hasText: 'De-slot' }).waitFor()

  await verb(wall, 'Fault').click()
  await wall.getByRole('button', { name: 'Braid', exact: true }).click()
  await wall.getByRole('region', { name: 'Faults' }).getByText('Braid').waitFor()

  await stopWithGo(wall)
  await phone.getByText('Ida Quill, post 2').waitFor()

  await verb(wall, 'Power is off').click()
  await banner(wall).getByText('Power off').waitFor()
  const held = await figureIn(banner(wall))
  await verb(wall, 'Set clock').click()
  await wall.getByRole('button', { name: '1', exact: true }).click()
  for (const digit of ['5', '00'])
    await wall.getByRole('button', { name: digit, exact: true }).click()
  await wall.getByRole('button', { name: 'It shows this now' }).click()
  await expect.poll(() => figureIn(banner(wall))).not.toBe(held)
  expect(await figureIn(banner(wall))).toBe(15 * 60)
  await verb(wall, 'Power is on').click()
  await expect.poll(() => figureIn(banner(wall))).toBeLessThan(15 * 60)
}

/** M3: in, mended, GO, out with the change. */
async function stopWithGo(wall: Page): Promise<void> {
  await verb(wall, 'Car in').click()
  await wall.getByText(/Mandatory stop 1/).waitFor()
  await wall.getByRole('checkbox', { name: 'Done: Braid' }).click()
  await wall.getByText('GO', { exact: true }).waitFor()
  await wall.getByText(/Change: .*Tom Wick drives/).waitFor()
  await verb(wall, 'Car out').click()
  await wall.getByText('At the controller').waitFor()
}

async function runSecondSegment(wall: Page): Promise<void> {
  await more(wall, 'Segment over')
  await banner(wall).getByText('Break').waitFor()
  await verb(wall, 'Green segment 2').click()
  await banner(wall).getByText('Green', { exact: true }).waitFor()
  await banner(wall).getByText('Segment 2 of 2').waitFor()
  await more(wall, 'Flag')
  await banner(wall).getByText('Finished').waitFor()
}

it('M5 a call fills the phone until the wall marks it heard', async () => {
  const { wall, phone } = await race('driver', 'Ida Quill')
  await phone.getByText('Left in this stint').waitFor()
  expect(await phone.getByRole('button').count()).toBe(0)

  await more(wall, 'Call somebody')
  await wall.getByRole('button', { name: 'Come in this lap' }).click()
  const words = phone.getByRole('alert').getByText('Come in this lap')
  await words.waitFor()
  const { width = 0 } = (await words.boundingBox()) ?? {}
  expect(width).toBeGreaterThan(PHONE.width * 0.8)

  await wall.getByRole('button', { name: 'Heard' }).click()
  await words.waitFor({ state: 'detached' })
  await phone.getByText('Left in this stint').waitFor()
})

it('M6 the marshal’s page says post, until when, and who relieves', async () => {
  const { phone } = await race('marshal', 'Bea Lorne')
  const page = phone.getByRole('main')
  await page.getByText('Post 2', { exact: true }).waitFor()
  await page.getByText(/until about (\w+ )?\d\d:\d\d/).waitFor()
  await page.getByText('relieved by Ida Quill').waitFor()
})

/** A meeting five minutes into its first segment, with a wall and one person’s phone. */
async function race(screen: 'driver' | 'marshal', person: string) {
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 5 })
  const wall = await house.screen('pitWall', 'Wall')
  const phone = await house.screen('crew', 'Phone', { viewport: PHONE })
  await Promise.all([wall.goto(meeting.path('wall')), phone.goto(meeting.path(screen))])
  await phone.getByRole('button', { name: person }).click()
  await verb(wall, 'De-slot').waitFor()
  return { meeting, wall, phone }
}

it('M7 the log shows every entry, moves one, voids one with a reason and restores it', async () => {
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 5 })
  await meeting.press('incident.1', { what: 'deSlot' }, 120)
  await meeting.press('note.1', { words: 'Marbles at the hairpin' }, 60)
  const page = await house.screen('pitWall', 'Wall')
  await page.goto(meeting.path('log'))

  // Four documents, the handover, the green, the de-slot, the note.
  await page.getByText('8 entries').waitFor()
  const deSlot = page.getByRole('listitem').filter({ hasText: 'De-slot', hasNotText: 'Correction' })
  const pressedAt = await timeIn(deSlot)
  await deSlot.click()
  const entry = page.getByRole('complementary', { name: 'Entry' })
  await entry.getByRole('button', { name: '− 1 min' }).click()
  await entry.getByLabel('Why').fill('seen late')
  await entry.getByRole('button', { name: 'Move it' }).click()
  await deSlot.getByText(`pressed at ${pressedAt}: seen late`).waitFor()
  expect(secondsFrom(await timeIn(deSlot), pressedAt)).toBe(60)

  await page.getByRole('listitem').filter({ hasText: 'Marbles' }).click()
  await entry.getByLabel('Why').fill('another meeting')
  await entry.getByRole('button', { name: 'Make it void' }).click()
  const voided = page.getByRole('listitem').getByText('void: another meeting')
  await voided.waitFor()
  await entry.getByRole('button', { name: 'Restore' }).click()
  await voided.waitFor({ state: 'detached' })
  // The eight, and three corrections.
  await page.getByText('11 entries').waitFor()
})

async function timeIn(row: Locator): Promise<string> {
  return /\d\d:\d\d:\d\d/.exec(await row.innerText())?.[0] ?? ''
}

/** Over midnight too. */
function secondsFrom(earlier: string, later: string): number {
  const ms = Date.parse(`1970-01-02T${later}Z`) - Date.parse(`1970-01-02T${earlier}Z`)
  return ((ms + 86_400_000) % 86_400_000) / 1_000
}
