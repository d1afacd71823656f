/**
 * The captain's evening before: rules and crew.
 *
 * R1  A rule is found, added and filled in with the keyboard alone.
 * R2  What is not known yet is a question for the briefing until it is said, and again once it is unsaid.
 * R3  What cannot hold together is named with its rule, and gone once it is mended.
 * R4  A published set replaces programme and rules, keeps what the meeting is called, and can be undone.
 * R5  A rule taken out comes back to its place; what it could also say and the organiser's words are kept.
 * R6  What cannot be read stays as typed and says how to write it; the rule keeps what it said.
 * R7  A person is added, described and taken out; taken out, they are still in the team.
 * R8  Adopted, the rules are what the meeting goes by; after green it is said whether they correct or change.
 */
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Locator, Page } from 'playwright-core'
import { enterMeeting, type EnteredMeeting } from './lantern-forty.ts'
import { House, PHONE } from './screens.ts'

let house: House
let meeting: EnteredMeeting
beforeEach(async () => {
  house = await House.open()
  meeting = await enterMeeting(await house.captain())
})
afterEach(async () => {
  await house.close()
  expect(house.complaints).toEqual([])
})

async function open(screen: string, options = {}): Promise<Page> {
  const page = await house.screen('captain', 'Captain’s tablet', options)
  await page.goto(meeting.path(screen))
  await page.getByText('The meeting goes by what stands here').waitFor()
  return page
}
const questions = (page: Page) => page.getByRole('region', { name: 'Ask at the briefing' })
const rule = (page: Page, sentence: string | RegExp) => page.getByRole('group', { name: sentence })

async function add(page: Page, called: string): Promise<void> {
  await page.getByRole('button', { name: 'Add a rule' }).click()
  await page.getByLabel('What the rule is about').fill(called)
  await page.keyboard.press('Enter')
}

it('R1, R2 writes a rule by keyboard alone, and asks what is left open', async () => {
  const page = await open('rules')
  await page.getByRole('button', { name: 'Add a rule' }).focus()
  await page.keyboard.press('Enter')
  await page.keyboard.type('rest')
  await page.keyboard.press('ArrowDown')
  expect(await focusedName(page)).toMatch(/rest/i)
  await page.keyboard.press('ArrowUp')
  await page.keyboard.press('Enter')
  // The first value has the focus: at least.
  await page.keyboard.type('0:30')
  await rule(
    page,
    'Between two stints there is rest of at least 0:30; marshalling not known yet.',
  ).waitFor()
  await questions(page).getByText('Does marshalling count as rest?').waitFor()
  expect(await questions(page).getByRole('listitem').count()).toBe(1)

  await questions(page).getByRole('button', { name: 'Copy the questions' }).click()
  await questions(page)
    .getByText(/^(Copied|Selected)/)
    .waitFor()

  await page.getByLabel('Rest: at least').focus()
  await page.keyboard.press('Tab')
  await page.keyboard.type('is rest')
  await rule(page, /marshalling is rest\.$/).waitFor()
  await questions(page).waitFor({ state: 'detached' })
  await page.getByLabel('Rest: marshalling').selectOption('not known yet')
  await page.getByLabel('Rest: at least').fill('')
  expect(await questions(page).getByRole('listitem').allInnerTexts()).toEqual([
    'How long must a driver rest between two stints?',
    'Does marshalling count as rest?',
  ])
})

it('R3 names what cannot hold, and leads to the rule', async () => {
  const page = await open('rules')
  await add(page, 'Driving time')
  await page.getByLabel('Driving time: at least').fill('3:00')
  const clash = page.getByRole('region', { name: 'What cannot hold together' })
  await page.getByLabel('Driving time: at most').fill('2:00')
  await clash.waitFor()
  await page.getByLabel('Clause of the rule: Driving time').fill('4.2')
  await page.keyboard.press('Tab')
  await clash.getByRole('button', { name: 'Go to 4.2' }).first().click()
  await expect.poll(() => focusedName(page)).toMatch(/^Each driver drives at least 3:00/)
  await page.getByLabel('Driving time 4.2: at least').fill('0:10')
  await page.getByLabel('Driving time 4.2: at most').fill('0:40')
  await clash.waitFor({ state: 'detached' })
})

it('R4 starts from a published set, and goes back', async () => {
  const page = await open('rules')
  await page.getByRole('button', { name: 'Start from a published set' }).click()
  const sets = page.getByRole('region', { name: 'Published sets' })
  await sets.getByRole('button', { name: /BSCRA/ }).click()
  const undo = page.getByRole('button', { name: 'Undo' })
  await undo.waitFor()
  await expect
    .poll(() => page.getByLabel('Name', { exact: true }).inputValue())
    .toBe('Lantern Forty')
  await page.getByText('8 segments of 0:45').waitFor()
  const note = page.getByLabel('What else is to be known of these rules')
  expect(await note.inputValue()).toBe('Eight segments, one a lane.')
  expect(await page.getByLabel('Mandatory stops: count').count()).toBe(0)

  await undo.click()
  await page.getByLabel('Mandatory stops: count').waitFor()
  expect(await page.getByText('8 segments of 0:45').count()).toBe(0)
  await page.getByText('The meeting goes by what stands here').waitFor()
  expect(await note.inputValue()).toBe('')
})

it('R5 takes a rule out and back, with all it says', async () => {
  const page = await open('rules')
  const sentences = () => page.locator('[id^=rule-]').evaluateAll(namesOf)
  await page.getByRole('button', { name: 'and … (Mandatory stops)' }).click()
  await page.getByLabel('Mandatory stops: the organiser’s words').fill('Two stops, no more.')
  const before = await sentences()
  await page.getByRole('button', { name: 'Mandatory stops: remove this rule' }).click()
  await expect.poll(async () => (await sentences()).length).toBe(before.length - 1)
  await page.getByText('Removed: mandatory stops.').waitFor()
  await page.keyboard.press('Enter')
  await expect.poll(sentences).toEqual(before)
  await page.getByText('“Two stops, no more.”').waitFor()

  await add(page, 'Who may work')
  await page.getByRole('button', { name: 'and … (Who may work)' }).click()
  await page.getByRole('button', { name: 'at most … at once' }).click()
  await page.getByLabel('Who may work: at most').fill('2')
  await rule(page, 'Not known yet may work on the car, at most 2 at once.').waitFor()
  await page.getByRole('button', { name: 'at most … at once' }).click()
  await rule(page, 'Not known yet may work on the car.').waitFor()
})

it('R6 keeps what it cannot read as it was typed', async () => {
  const page = await open('rules')
  const minimum = page.getByLabel('Minimum stop: minimum')
  await minimum.fill('three quarters')
  await page.getByRole('alert').getByText('write 45 s or 1:30').waitFor()
  await page.getByLabel('Place').focus()
  expect(await minimum.inputValue()).toBe('three quarters')
  await rule(page, /^Each lasts at least 45 s/).waitFor()
  await minimum.fill('1:00')
  await rule(page, /^Each lasts at least 60 s/).waitFor()
})

it('R7 describes a person on a phone, takes them out and back in', async () => {
  const page = await open('crew', { viewport: PHONE, hasTouch: true })
  await page.getByLabel('Name of a person').fill('Solveig Tarn')
  await page.keyboard.press('Enter')
  const solveig = page.getByRole('group', { name: 'Solveig Tarn', exact: true })
  await solveig.getByRole('button', { name: 'Solveig Tarn: marshals' }).click()
  await solveig.getByLabel('Solveig Tarn: one more category').fill('novice')
  await page.keyboard.press('Enter')
  await solveig.getByRole('button', { name: 'no longer novice' }).waitFor()
  await solveig.getByLabel('Solveig Tarn: pace').fill('8,42')
  await solveig.getByRole('button', { name: 'say when they are there' }).click()
  await solveig.getByLabel('there from, at the venue').fill('2026-03-28T12:30')
  await solveig.getByLabel('Solveig Tarn: wishes').fill('Not the first stint.')
  await page.getByText('draft saved').waitFor()
  await page.reload()
  await solveig.getByText('by hand, no evidence yet').waitFor()
  expect(await valueOf(solveig, 'Solveig Tarn: pace')).toBe('8.42 s')
  expect(await valueOf(solveig, 'there from, at the venue')).toBe('2026-03-28T12:30')
  expect(await valueOf(solveig, 'Solveig Tarn: wishes')).toBe('Not the first stint.')
  const marshals = solveig.getByRole('button', { name: 'Solveig Tarn: marshals' })
  expect(await marshals.getAttribute('aria-pressed')).toBe('false')

  await solveig.getByRole('button', { name: 'take out of this meeting' }).click()
  await solveig.waitFor({ state: 'detached' })
  await page.getByRole('button', { name: 'Undo' }).click()
  await solveig.getByRole('button', { name: 'no longer novice' }).waitFor()
  await solveig.getByRole('button', { name: 'take out of this meeting' }).click()
  await page.getByText('draft saved').waitFor()
  await page.reload()
  await page.getByRole('button', { name: 'Take in Solveig Tarn' }).click()
  await solveig.waitFor()
})

it('R8 adopts a change after green as what it is', async () => {
  await meeting.press('green.1', { segment: 's1' }, 60)
  const page = await open('rules')
  await page.getByLabel('Mandatory stops: count').fill('3')
  await page.getByText('It has begun; say what the change is.').waitFor()
  await page.getByRole('button', { name: 'Adopt: holds from now' }).click()
  await page.getByText('Adopted: saved.').waitFor()
  await page.getByText('The meeting goes by what stands here').waitFor()
})

function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const element = document.activeElement
    return element?.ariaLabel ?? element?.textContent ?? ''
  })
}

function namesOf(elements: Element[]): (string | null)[] {
  return elements.map((element) => element.ariaLabel)
}

function valueOf(part: Locator, label: string): Promise<string> {
  return part.getByLabel(label).inputValue()
}
