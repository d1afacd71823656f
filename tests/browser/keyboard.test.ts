/**
 * The pit wall by its keys alone.
 *
 * K1  A verb’s number presses it, 0 takes the last press back, and Escape puts a sheet away.
 * K2  While something is typed or a clock is set, digits are digits.
 * K3  Tab reaches every verb, Enter presses it, and where the focus is can be seen.
 */
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { enterMeeting } from './lantern-forty.ts'
import { banner, figureIn, House, verb } from './screens.ts'

let house: House
let wall: Page
beforeEach(async () => {
  house = await House.open()
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 5 })
  wall = await house.screen('pitWall', 'Laptop')
  await wall.goto(meeting.path('wall'))
  await verb(wall, 'De-slot').waitFor()
  await awake()
})
afterEach(async () => {
  await house.close()
  expect(house.complaints).toEqual([])
})

it('K1 presses verbs by their numbers, undoes by 0, closes by Escape', async () => {
  await wall.keyboard.press(await keyOf('De-slot'))
  await wall.getByText(/De-slot recorded/).waitFor()
  await wall.keyboard.press('0')
  await wall.getByRole('deletion').filter({ hasText: 'De-slot' }).waitFor()
  await wall.getByText(/De-slot recorded/).waitFor({ state: 'detached' })

  await wall.keyboard.press(await keyOf('Change'))
  const sheet = wall.getByRole('dialog').getByRole('button', { name: 'Record the change' })
  await sheet.waitFor()
  await wall.keyboard.press('Escape')
  await sheet.waitFor({ state: 'detached' })

  await wall.keyboard.press(await keyOf('Power is off'))
  await banner(wall).getByText('Power off').waitFor()
  await awake()
  await wall.keyboard.press(await keyOf('Power is on'))
  await banner(wall).getByText('Green', { exact: true }).waitFor()
})

it('K2 digits typed into a note or a clock press no verb', async () => {
  await wall.keyboard.press(await keyOf('More'))
  const sheet = wall.getByRole('dialog', { name: 'More' })
  await sheet.getByRole('button', { name: 'Note', exact: true }).press('Enter')
  await wall.getByRole('textbox', { name: 'What happened' }).press('3')
  await wall.keyboard.type(' laps down')
  await wall.keyboard.press('Enter')
  await wall.getByText('Note: 3 laps down').waitFor()

  await wall.keyboard.press(await keyOf('Power is off'))
  await banner(wall).getByText('Power off').waitFor()
  await awake()
  await wall.keyboard.press(await keyOf('Set clock'))
  const shows = wall.getByRole('dialog').getByRole('button', { name: 'It shows this now' })
  await shows.waitFor()
  await wall.keyboard.type('3000')
  await shows.press('Enter')
  await expect.poll(() => figureIn(banner(wall))).toBe(30 * 60)
  expect(await wall.getByText('De-slot').count()).toBe(0)
})

it('K3 Tab reaches every verb, Enter presses it, and the focus is seen', async () => {
  const reached = new Set<string>()
  for (let presses = 0; presses < 60; presses += 1) {
    await wall.keyboard.press('Tab')
    const { word, outlinePx } = await focused()
    expect(outlinePx).toBeGreaterThanOrEqual(2)
    reached.add(word)
    if (word === 'More') break
  }
  for (const word of ['Car in', 'Change', 'De-slot', 'Fault', 'Power is off', 'More']) {
    expect([...reached]).toContain(word)
  }
  await wall.keyboard.press('Enter')
  await wall.getByRole('dialog', { name: 'More' }).waitFor()
})

/** A verb that has just changed its meaning sleeps. */
async function awake(): Promise<void> {
  await wall.waitForFunction(() => !document.querySelector('[aria-disabled="true"]'))
}

async function keyOf(word: string): Promise<string> {
  return (await verb(wall, word).getAttribute('aria-keyshortcuts')) ?? ''
}

function focused(): Promise<{ word: string; outlinePx: number }> {
  return wall.evaluate(() => {
    const element = document.activeElement ?? document.body
    const word = element.querySelector('span')?.textContent ?? ''
    return { word, outlinePx: parseFloat(getComputedStyle(element).outlineWidth) }
  })
}
