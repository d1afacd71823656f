/**
 * What people ask for, and where they cannot be.
 *
 * A1  A rest without a break is a wish on Crew; Rotation says where it is not fulfilled.
 * A2  A wish is a sentence: added, changed and taken out by presses, and saved.
 * A3  Who is asked to be in two places by two meetings is named on Crew and on Rotation.
 * A4  The spare car is brought out in two presses, and the first car is offered again.
 */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest'
import { entriesPageSchema } from '@pitlamp/contract'
import type { Crew } from '@pitlamp/race'
import { BEA, enterMeeting, TOM, type EnteredMeeting } from './lantern-forty.ts'
import { House, TABLET } from './screens.ts'

const TIME_MS = 120_000

let house: House
beforeAll(async () => {
  house = await House.open()
})
afterAll(() => house.close())
afterEach(() => expect(house.complaints.splice(0)).toEqual([]))

async function show(meeting: EnteredMeeting, screen: string): Promise<Page> {
  const role = screen === 'wall' ? 'pitWall' : 'captain'
  const page = await house.screen(role, 'Tablet', { viewport: TABLET })
  await page.goto(meeting.path(screen))
  return page
}

async function savedCrew(meeting: EnteredMeeting): Promise<Crew> {
  const captain = await house.captain()
  const draft = await captain.call('GET', `/api/meetings/${meeting.id}/documents/crew`)
  return (draft as { content: Crew }).content
}

const member = ({ people }: Crew, id: string) => people.find((one) => one.id === id)

it('A1 a rest without a break is a wish, and is judged', { timeout: TIME_MS }, async () => {
  const meeting = await enterMeeting(await house.captain())
  const page = await show(meeting, 'crew')
  await page.getByLabel('Bea Lorne: rest without a break').fill('2:00')
  await page.getByLabel('Bea Lorne: rest without a break').blur()
  await expect
    .poll(async () => member(await savedCrew(meeting), BEA)?.restBlock)
    .toEqual({ atLeastMs: 7_200_000 })
  await page.getByRole('link', { name: 'Rotation' }).click()
  // Bea has a duty all the time but the break of ten minutes.
  await page.getByText('Bea Lorne’s longest rest is 0:10, Bea Lorne wishes for 2:00').waitFor()
  await page.getByRole('link', { name: 'Crew' }).click()
  await page.getByLabel('Bea Lorne: rest without a break').fill('')
  await page.getByLabel('Bea Lorne: rest without a break').blur()
  await expect.poll(async () => member(await savedCrew(meeting), BEA)?.restBlock).toBeUndefined()
})

it('A2 wishes are added, changed and taken out', { timeout: TIME_MS }, async () => {
  const meeting = await enterMeeting(await house.captain())
  const page = await show(meeting, 'crew')
  const wishes = page.getByRole('list', { name: 'Tom Wick: asks of the rotation' })
  const add = page.getByLabel('Tom Wick: add a wish')
  await add.selectOption('not to drive first or last')
  await page.getByLabel('Tom Wick: not to drive').selectOption('last')
  await add.selectOption('to have somebody beside them')
  await page.getByLabel('Tom Wick: to have').selectOption('Bea Lorne')
  await add.selectOption('to drive no more than so long')
  await page.getByLabel('Tom Wick: to drive no more than').fill('0:30')
  await page.getByLabel('Tom Wick: to drive no more than').blur()
  await expect
    .poll(async () => member(await savedCrew(meeting), TOM)?.wishList)
    .toMatchObject([
      { kind: 'notAtEnd', which: 'last' },
      { kind: 'beside', other: BEA },
      { kind: 'noMoreThan', atMostMs: 1_800_000 },
    ])
  const out = wishes.getByRole('button', { name: 'Tom Wick: take this wish out' })
  await out.nth(1).click()
  await expect.poll(() => out.count()).toBe(2)
  await expect
    .poll(async () => member(await savedCrew(meeting), TOM)?.wishList?.map(({ kind }) => kind))
    .toEqual(['notAtEnd', 'noMoreThan'])
})

it('A3 whoever is asked to be in two places is named', { timeout: TIME_MS }, async () => {
  const captain = await house.captain()
  await enterMeeting(captain, { minutesAfterGreen: 3 })
  const second = await enterMeeting(captain, { minutesAfterGreen: 3 })
  for (const screen of ['crew', 'rotation']) {
    const page = await show(second, screen)
    await page.getByText('In two places at once').waitFor()
    await page
      .getByText(/^Ida Quill: drives here, drives in Lantern Forty, /)
      .first()
      .waitFor()
    await page.context().close()
  }
})

it('A4 the spare car is brought out in two presses', { timeout: TIME_MS }, async () => {
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: 3 })
  const page = await show(meeting, 'wall')
  await page.getByRole('button', { name: /^The car:/ }).click()
  const others = page.getByRole('group', { name: 'Car exchanged for' })
  await others.getByRole('button', { name: 'Spare car' }).click()
  await page.getByText('Spare car on track').first().waitFor()
  await page.getByRole('button', { name: /^The car:/ }).click()
  await others.getByRole('button', { name: 'Wren Mark 4' }).waitFor()
  const entries = entriesPageSchema.parse(
    await (await house.captain()).call('GET', `/api/meetings/${meeting.id}/entries?after=0`),
  ).entries
  const said = entries.filter(({ kind }) => kind === 'carExchanged.1')
  expect(said.map(({ body }) => JSON.parse(body) as unknown)).toEqual([{ car: 'Spare car' }])
})
