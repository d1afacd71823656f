/**
 * What was worked out, looked at before it is taken.
 *
 * W7  What each rule, wish and kept line costs is worked out, the dearest first, and can be stopped.
 * W8  The plan as it stands lies dashed under what was worked out, with what each person drives in both.
 * W9  Two ways on in the race stand side by side: one press shows the other, one leaves both.
 * W10  An earlier version is named while it lies under the plan.
 */
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Locator, Page } from 'playwright-core'
import type { Crew, Plan } from '@pitlamp/race'
import {
  enterMeeting,
  IDA,
  TOM,
  type EnteredMeeting,
  type MeetingOptions,
} from './lantern-forty.ts'
import { House, TABLET } from './screens.ts'

/** A solver on a busy machine. */
const SOLVED = { timeout: 60_000 }
/** Of seven lines, each at most ten seconds by the solver's count. */
const COSTED = { timeout: 150_000 }
const TIME_MS = 240_000

let house: House
let meeting: EnteredMeeting
beforeEach(async () => {
  house = await House.open()
})
afterEach(async () => {
  await house.close()
  expect(house.complaints).toEqual([])
})

/** Ida laps in 8.5 s, Tom in 8.7, Bea in 8.9; Tom wishes to drive no more than 20 min. */
async function rotation(options: MeetingOptions = {}): Promise<Page> {
  const captain = await house.captain()
  meeting = await enterMeeting(captain, options)
  const path = `/api/meetings/${meeting.id}/documents/crew`
  const draft = (await captain.call('GET', path)) as { version: number; content: Crew }
  const wish = { id: 'w1', kind: 'noMoreThan' as const, atMostMs: 1_200_000 }
  const people = draft.content.people.map((one, place) => ({
    ...{ ...one, paceMs: 8_500 + 200 * place },
    ...(one.id === TOM ? { wishList: [wish] } : {}),
  }))
  await captain.call('PUT', path, { basedOn: draft.version, content: { people } })
  const page = await house.screen('captain', 'Laptop', { viewport: TABLET })
  await page.goto(meeting.path('rotation'))
  await worked(page).waitFor(SOLVED)
  return page
}

const worked = (page: Page): Locator => page.getByRole('region', { name: 'Work it out' })
const button = (page: Page | Locator, name: string) =>
  page.getByRole('button', { name, exact: true })

async function workItOut(page: Page, word = 'Work it out'): Promise<void> {
  await page.getByLabel('Stops', { exact: true }).selectOption('are chosen, every 10 min')
  await button(page, word).click()
  await button(page, 'Leave it').waitFor(SOLVED)
}

async function whoDrivesSecond(): Promise<string | undefined> {
  const captain = await house.captain()
  const draft = await captain.call('GET', `/api/meetings/${meeting.id}/documents/plan`)
  const { spans } = (draft as { content: Plan }).content
  return spans.find(({ id }) => id === 's2-0-drive')?.person
}

it('W7 what each rule costs, the dearest first', { timeout: TIME_MS }, async () => {
  const page = await rotation()
  await workItOut(page)
  await button(page, 'What each rule costs').click()
  await page.getByText('Each rule is taken away by itself.').waitFor()
  const costs = page.getByRole('table').filter({ hasText: 'Without it' })
  await costs.getByText('Tom Wick wishes to drive no more than 0:20.').waitFor(COSTED)
  await button(page, 'Stop').waitFor({ state: 'detached', ...COSTED })
  // Four stops less of 45 s and more, and of the laps to get used to it: by far the dearest.
  expect(await costs.getByRole('row').nth(1).innerText()).toMatch(
    /^2 stops in each segment\.\s+\d+( to \d+)? laps$/,
  )
  await costs.getByText('Somebody is at the wall all the time, as was asked for here.').waitFor()
  await button(page, 'Leave it').click()
  await costs.waitFor({ state: 'detached' })
})

it(
  'W7, W8 it can be stopped; the plan as it stands lies dashed',
  { timeout: TIME_MS },
  async () => {
    const page = await rotation()
    await workItOut(page)
    // As it stands Ida drives 13 of the first 40 min and all of the second.
    await page.getByText('dashed 0:53').waitFor()
    await page.getByText('with the plan as it stands dashed under it').waitFor()
    await button(page, 'What each rule costs').click()
    await button(page, 'Stop').click()
    await button(page, 'What each rule costs').waitFor({ timeout: 1_000 })
    await button(page, 'Take it').waitFor()
    await button(page, 'Leave it').click()
    await page.getByText('dashed 0:53').waitFor({ state: 'detached' })
  },
)

it('W9 two ways on stand side by side', { timeout: TIME_MS }, async () => {
  const page = await rotation({ minutesAfterGreen: 15 })
  await meeting.press('availability.1', { person: TOM, state: 'unwell' }, 60)
  await page
    .getByText(/Tom Wick .* is not there/)
    .first()
    .waitFor()
  await button(page, 'Somebody is always at the wall').click()
  await workItOut(page, 'Work it out again')
  const fewest = page.getByRole('group', { name: 'Fewest changes' })
  const most = page.getByRole('group', { name: 'Most laps' })
  await fewest.getByText('No plan changes less.').waitFor()
  const [left, right] = [await fewest.boundingBox(), await most.boundingBox()]
  expect(left?.y).toBe(right?.y)
  // What was worked out begins where the race is now: nothing in it is broken.
  await page.getByText('Every rule that can be checked is kept.').waitFor()
  await button(most, 'Show').click()
  await button(most, 'On the strip').waitFor()
  await button(fewest, 'Show').waitFor()
  await button(page, 'Leave it').click()
  await button(page, 'Work it out again').waitFor()
})

it('W10 an earlier version is named while it lies dashed', { timeout: TIME_MS }, async () => {
  const page = await rotation()
  await button(page, 'Ida Quill drives in Segment 2 from 0:00 to 0:40').click()
  await page.getByLabel('Chosen: person').selectOption({ value: TOM })
  await page.getByText('draft saved').waitFor()
  await page.keyboard.press('Escape')
  await page.getByText('Earlier versions').click()
  await button(page, 'Compare with version 1').click()
  // Ida drove 13 min and 40 min, and drives 13 min now.
  await page.getByText('dashed 0:53').waitFor()
  await button(page, 'Bring back version 1').click()
  await button(page, 'Ida Quill drives in Segment 2 from 0:00 to 0:40').waitFor()
  await page.getByText('dashed 0:53').waitFor({ state: 'detached' })
  await expect.poll(whoDrivesSecond).toBe(IDA)
})
