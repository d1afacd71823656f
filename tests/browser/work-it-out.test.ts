/**
 * The rotation worked out.
 *
 * W1  What rules out any plan is said: the one change that makes it possible.
 * W2  Stops chosen by the program make it possible; it is taken as one step, saved, and taken back.
 * W3  Whoever stops it while it is worked on is back where they began.
 * W4  What is kept by hand stays.
 * W5  In the race somebody is gone: two ways on, adopted with one press, and what was driven stays.
 *     The plan is adopted, and nothing else that is drafted.
 * W6  A person is kept by keyboard: all they do stays, and it is taken back.
 */
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
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
const SOLVED = { timeout: 40_000 }

let house: House
let meeting: EnteredMeeting
beforeEach(async () => {
  house = await House.open()
})
afterEach(async () => {
  await house.close()
  expect(house.complaints).toEqual([])
})

async function rotation(options: MeetingOptions = {}): Promise<Page> {
  const captain = await house.captain()
  meeting = await enterMeeting(captain, options)
  await savePaces()
  const page = await house.screen('captain', 'Laptop', { viewport: TABLET })
  await page.goto(meeting.path('rotation'))
  await page.getByRole('region', { name: 'Work it out' }).waitFor()
  return page
}

async function savePaces(): Promise<void> {
  const captain = await house.captain()
  const path = `/api/meetings/${meeting.id}/documents/crew`
  const draft = (await captain.call('GET', path)) as { version: number; content: Crew }
  const people = draft.content.people.map((one, place) => ({ ...one, paceMs: 8_500 + 200 * place }))
  await captain.call('PUT', path, { basedOn: draft.version, content: { people } })
}

async function savedPlan(): Promise<Plan> {
  const captain = await house.captain()
  const draft = await captain.call('GET', `/api/meetings/${meeting.id}/documents/plan`)
  return (draft as { content: Plan }).content
}

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true })
const chooseStops = (page: Page) =>
  page.getByLabel('Stops', { exact: true }).selectOption('are chosen, every 10 min')

it('W1 what rules out any plan is said: the one change that makes it possible', async () => {
  const page = await rotation()
  await button(page, 'Work it out').click()
  await page.getByText('No plan keeps all of this.').waitFor(SOLVED)
  const said = page.getByRole('region', { name: 'Work it out' })
  await said.getByText('One change makes it possible. Without this:').waitFor()
  await said.getByText('2 stops in each segment.').waitFor()
  await said.getByText('Ida Quill, Tom Wick and Bea Lorne can drive.').waitFor()
})

it('W2 stops are chosen, the plan is taken as one step, saved, and taken back', async () => {
  const page = await rotation()
  await chooseStops(page)
  await button(page, 'Work it out').click()
  await button(page, 'Take it').waitFor(SOLVED)
  const answer = page.getByRole('group', { name: 'Laps expected' })
  await answer
    .getByText(/The best|No plan is more than/)
    .first()
    .waitFor()
  await page.getByText('Every rule that can be checked is kept.').waitFor()
  const before = await savedPlan()
  await button(page, 'Take it').click()
  await expect
    .poll(async () => (await savedPlan()).stops.filter(({ segment }) => segment === 's2').length)
    .toBe(2)
  await button(page, 'Undo').click()
  await expect.poll(savedPlan).toEqual(before)
})

it('W3 stopped while it is worked on, everything is as it was', async () => {
  const page = await rotation()
  await chooseStops(page)
  const before = await savedPlan()
  await button(page, 'Work it out').click()
  await button(page, 'Stop').click()
  await button(page, 'Work it out').waitFor({ timeout: 1_000 })
  expect(await savedPlan()).toEqual(before)
})

it('W4 what is kept by hand stays', async () => {
  const page = await rotation()
  await chooseStops(page)
  await button(page, 'Ida Quill drives in Segment 2 from 0:00 to 0:40').click()
  await page.getByLabel('Chosen: to').fill('0:20')
  await page.getByLabel('Chosen: person').selectOption('Tom Wick')
  await button(page, 'Keep this').click()
  await button(page, 'Work it out').click()
  await button(page, 'Take it').click(SOLVED)
  await expect
    .poll(async () => (await savedPlan()).spans.find(({ pinned }) => pinned === true))
    .toMatchObject({ person: TOM, duty: 'controller', segment: 's2', fromMs: 0 })
})

it('W5 in the race somebody is gone: two ways on, adopted with one press', async () => {
  const page = await rotation({ minutesAfterGreen: 15 })
  await meeting.press('availability.1', { person: TOM, state: 'unwell' }, 60)
  await page
    .getByText(/Tom Wick .* is not there/)
    .first()
    .waitFor()
  await chooseStops(page)
  // Two people drive and marshal; nobody is left for the wall.
  await button(page, 'Somebody is always at the wall').click()
  await button(page, 'Work it out again').click()
  const ways = page.getByRole('group', { name: /Fewest changes|Most laps/ })
  await expect.poll(() => ways.count(), SOLVED).toBe(2)
  await page
    .getByRole('group', { name: 'Fewest changes' })
    .getByRole('button', { name: 'Adopt: holds from now' })
    .click()
  await page.getByText(/^Adopted/).waitFor()
  // The paces are a draft of the crew.
  await page.getByText('The meeting does not go by this yet: people.').waitFor()
  await expect
    .poll(async () =>
      (await savedPlan()).spans.some(({ person, segment }) => person === TOM && segment === 's2'),
    )
    .toBe(false)
  const plan = await savedPlan()
  // The line that was driven is as it was planned.
  expect(plan.spans.find(({ id }) => id === 's1-0-drive')).toMatchObject({
    person: IDA,
    fromMs: 0,
    toMs: 780_000,
  })
})

it('W6 a person is kept by keyboard: all they do stays, and it is taken back', async () => {
  const page = await rotation()
  await chooseStops(page)
  const before = await savedPlan()
  const tom = page.getByRole('button', { name: /^Keep Tom Wick as planned/ })
  await tom.focus()
  await page.keyboard.press('Enter')
  await expect.poll(() => tom.getAttribute('aria-pressed')).toBe('true')
  await button(page, 'Tom Wick drives in Segment 1 from 0:13 to 0:27, kept').waitFor()
  await button(page, 'Work it out').click()
  await button(page, 'Take it').click(SOLVED)
  const tomsIn = ({ spans }: Plan) =>
    spans
      .filter(({ person }) => person === TOM)
      .map(({ duty, segment, fromMs, toMs }) => [segment, fromMs, toMs, duty])
      .sort()
  await expect.poll(async () => (await savedPlan()).stops.length).toBe(4)
  expect(tomsIn(await savedPlan())).toEqual(tomsIn(before))
  await button(page, 'Undo').click()
  await button(page, 'Undo').click()
  await expect.poll(() => tom.getAttribute('aria-pressed')).toBe('false')
  await expect.poll(savedPlan).toEqual(before)
})
