/**
 * A newcomer sees everything live within a minute.
 *
 * D1  On an empty Meetings screen one press opens the demo.
 * D2  `--demo` opens it with the server, at the speed asked for, and prints where.
 * D3  Another press opens the one on fixed lanes, and its lanes are drawn.
 */
import { afterEach, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { banner, figureIn, House } from './screens.ts'

const MINUTE_MS = 60_000

let house: House
afterEach(async () => {
  await house.close()
  expect(house.complaints).toEqual([])
})

it('D1 one press on an empty Meetings screen opens the demo', { timeout: 90_000 }, async () => {
  house = await House.open()
  const page = await joinAsCaptain()
  await page.getByText('No meeting yet').waitFor()
  const pressedAt = performance.now()
  await page.getByRole('button', { name: 'Open the demo' }).click()
  await seesItMove(page)
  expect(performance.now() - pressedAt).toBeLessThan(MINUTE_MS)
})

it('D2 --demo opens it with the server and prints where', { timeout: 90_000 }, async () => {
  const startedAt = performance.now()
  house = await House.open({ args: ['--demo', '20'] })
  await expect
    .poll(() => house.server.log(), { timeout: 10_000 })
    .toMatch(/The demo runs, 20 times/)
  const page = await joinAsCaptain()
  const [path = ''] = /\/meetings\/[0-9a-f-]{36}\/wall/.exec(house.server.log()) ?? []
  await page.goto(path)
  await seesItMove(page)
  expect(performance.now() - startedAt).toBeLessThan(MINUTE_MS)
})

it('D3 another press opens the one on fixed lanes', { timeout: 90_000 }, async () => {
  house = await House.open()
  const page = await joinAsCaptain()
  await page.getByRole('button', { name: 'Open one on fixed lanes' }).click()
  // 1 3 5 – 6 4 2 –, begun at 3.
  await page.getByText(/lane 5, sit-out, lane 6/).waitFor({ timeout: 30_000 })
  await seesItMove(page)
})

async function joinAsCaptain(): Promise<Page> {
  const page = await house.blank()
  await page.goto(`/join#${await house.server.captainCode()}`)
  await page.getByLabel('What this device is called').fill('Laptop')
  await page.getByRole('button', { name: 'Join', exact: true }).click()
  await page.getByRole('button', { name: 'Join', exact: true }).waitFor({ state: 'detached' })
  return page
}

/** A figure counts down, and something happens that had not happened yet. */
async function seesItMove(page: Page): Promise<void> {
  await banner(page).getByText('Green', { exact: true }).waitFor({ timeout: 30_000 })
  const left = await figureIn(banner(page))
  const before = await recorded(page)
  expect(before.length).toBeGreaterThan(0)
  await expect.poll(() => figureIn(banner(page))).toBeLessThan(left)
  await expect
    .poll(async () => (await recorded(page)).at(0), { timeout: 20_000 })
    .not.toBe(before[0])
}

/** What the wall repeats of the log, newest first. */
async function recorded(page: Page): Promise<readonly string[]> {
  const lines = await page.getByRole('listitem').allInnerTexts()
  return lines.filter((line) => /^\d\d:\d\d:\d\d/.test(line))
}
