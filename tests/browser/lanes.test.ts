/**
 * Fixed lanes and the day that goes wrong, on the wall and on phones.
 *
 * N1  The starting lane is one press after the draw, and every screen has the lanes that follow.
 * N2  When a segment ends the lane change is there by itself, on wall and phone; one press leads back, Green ends it.
 * N3  A programme that slips is told to whom it moves, and stays until it was heard.
 * N4  A segment is run again in two presses and is the next one.
 * N5  A classification is typed on a page of presses or pasted; sums follow.
 * N6  A new meeting begins with the crew, rules and car of another in one press.
 */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest'
import { draftSchema, entriesPageSchema } from '@pitlamp/contract'
import { enterLanes } from './lane-meeting.ts'
import { type EnteredMeeting, LANTERN_FORTY } from './lantern-forty.ts'
import { banner, House, PHONE, verb } from './screens.ts'

const TIME_MS = 120_000

let house: House
beforeAll(async () => {
  house = await House.open()
})
afterAll(() => house.close())
afterEach(() => expect(house.complaints.splice(0)).toEqual([]))

it('N1 the draw is one press', { timeout: TIME_MS }, async () => {
  const meeting = await enterLanes(house, { start: null })
  const [wall, phone] = await Promise.all([openWall(meeting), openPhone(meeting, 'Ida Quill')])
  await wall.getByText('Lanes to come: not drawn yet').waitFor()
  await verb(wall, 'Lane').click()
  await wall
    .getByRole('group', { name: 'We begin on' })
    .getByRole('button', { name: 'Lane 3' })
    .click()
  // Six lanes, odd up, even down, sat out after 5 and after 2.
  await wall.getByText('Lanes to come: lane 3, lane 5, sit-out, lane 6, lane 4, lane 2 …').waitFor()
  await phone.getByText('Lane 3, green', { exact: true }).waitFor()
  await phone.getByText('Your stint in Segment 1 is on lane 3, green.').waitFor()
  expect(await bodies(meeting, 'startDrawn.1')).toEqual([{ lane: 3 }])
})

it('N2 the lane change comes by itself and goes at green', { timeout: TIME_MS }, async () => {
  const meeting = await enterLanes(house, { minutesAfterGreen: 20.5 })
  const [wall, phone] = await Promise.all([openWall(meeting), openPhone(meeting, 'Tom Wick')])
  await verb(wall, 'De-slot').waitFor()
  await meeting.press('segmentEnd.1', { segment: 's1' }, 5)
  for (const page of [wall, phone]) {
    await page.getByText('Lane change, 1 of 8').waitFor()
    await page.getByText('From lane 1 (red) to lane 3 (green)').waitFor({ state: 'attached' })
  }
  await phone.getByText('You drive. Bea Lorne to post 3.').waitFor()
  await phone.getByRole('button', { name: 'My own page' }).click()
  await phone.getByRole('heading', { name: /^Tom Wick/ }).waitFor()
  await phone.getByRole('button', { name: 'Lane change' }).click()
  await phone.getByText('Lane change, 1 of 8').waitFor()

  await wall.getByRole('button', { name: 'Lights in order' }).click()
  await wall.getByText(/^Lights tried, in order/).waitFor()
  await phone.getByText(/^Lights tried, in order/).waitFor()
  await wall.getByRole('checkbox', { name: 'Done: Power tested' }).click()
  await wall.getByRole('checkbox', { name: 'Done: Tom Wick drives' }).click()
  await phone.getByRole('checkbox', { name: 'Done: Tom Wick drives', checked: true }).waitFor()
  await awake(wall, 'Green')
  await verb(wall, 'Green').click()
  await verb(wall, 'De-slot').waitFor()
  await phone.getByText('Left in this stint').waitFor()
  await phone.getByText('Lane 3, green', { exact: true }).waitFor()
})

it('N3 a programme that slips is told, and heard', { timeout: TIME_MS }, async () => {
  const meeting = await enterLanes(house, { minutesAfterGreen: 3 })
  const [wall, phone] = await Promise.all([openWall(meeting), openPhone(meeting, 'Tom Wick')])
  await phone.getByRole('heading', { name: /^Tom Wick/ }).waitFor()
  await verb(wall, 'Race control said').click()
  await wall.getByRole('button', { name: '10 min', exact: true }).click()
  const told = phone.getByRole('status', { name: 'What changed for you' })
  await told.getByText('Your stint in Segment 2 begins 0:10 later.').waitFor()
  await phone.reload()
  await told.getByText('Your stint in Segment 2 begins 0:10 later.').waitFor()
  await told.getByRole('button', { name: 'Heard' }).click()
  await told.waitFor({ state: 'detached' })
  await phone.reload()
  await phone.getByRole('heading', { name: /^Tom Wick/ }).waitFor()
  expect(await told.count()).toBe(0)
})

it('N4 a segment is run again', { timeout: TIME_MS }, async () => {
  const meeting = await enterLanes(house, { minutesAfterGreen: 6 })
  const wall = await openWall(meeting)
  await awake(wall, 'Race control said')
  await verb(wall, 'Race control said').click()
  const running = wall.getByRole('group', { name: 'Segment 1, running' })
  await running.getByRole('button', { name: 'Run again nothing counts' }).click()
  await wall.getByText('From lane 1 (red) to lane 1 (red)').waitFor({ state: 'attached' })
  await awake(wall, 'Green')
  await verb(wall, 'Green').click()
  await banner(wall).getByText('Segment 1 of 8', { exact: false }).waitFor()
  await verb(wall, 'De-slot').waitFor()
  const change = { what: 'runAgain', lapsCount: false, drivingCounts: false }
  expect(await bodies(meeting, 'segmentChanged.1')).toEqual([{ segment: 's1', change }])
})

it('N5 results are typed or pasted', { timeout: TIME_MS }, async () => {
  const meeting = await enterLanes(house, { minutesAfterGreen: 21 })
  await meeting.press('segmentEnd.1', { segment: 's1' }, 30)
  const page = await house.screen('pitWall', 'Wall tablet')
  await page.goto(meeting.path('results'))
  await page.getByRole('textbox', { name: 'Another team' }).fill('Tallow Works')
  await page.getByRole('button', { name: 'Add' }).click()
  for (const key of ['5', '1', 'Next', '2', '0', 'Next', '5', '2', 'Next', '5']) {
    await page.getByRole('button', { name: key, exact: true }).click()
  }
  await page.getByRole('button', { name: 'Provisional' }).click()
  const sum = page.getByRole('region', { name: 'After one segment' })
  await sum.getByText('52.05').waitFor()
  await sum.getByText('51.20').waitFor()
  await page.getByText(/^Too early to compare/).waitFor()
  await page.getByText('Paste the organiser’s table').click()
  await page
    .getByRole('textbox', { name: 'The organiser’s table' })
    .fill('1  Wren Mark 4  53.01\n2  Tallow Works  52.05')
  await page.getByRole('button', { name: 'Read it' }).click()
  await page.getByRole('button', { name: 'Official' }).click()
  await sum.getByText('53.01').waitFor()
  expect(await bodies(meeting, 'classification.1')).toMatchObject([
    { standing: 'provisional', scope: 'segment', segment: 's1' },
    { standing: 'official', lines: [{ place: 1, ours: true }, { place: 2 }] },
  ])
})

it('N6 a new meeting from this one', { timeout: TIME_MS }, async () => {
  await enterLanes(house)
  const page = await house.screen('captain', 'Laptop')
  await page.goto('/')
  const fromThis = page.getByRole('button', { name: 'New meeting from Lantern Forty' })
  await fromThis.first().click()
  await page.getByRole('heading', { name: 'Rules' }).waitFor()
  const [, id = ''] = /meetings\/([^/]+)\//.exec(page.url()) ?? []
  const captain = await house.captain()
  const draft = async (document: string) =>
    draftSchema.parse(await captain.call('GET', `/api/meetings/${id}/documents/${document}`))
  expect((await draft('crew')).content).toEqual(LANTERN_FORTY.crew)
  expect((await draft('car')).content).toEqual(LANTERN_FORTY.car)
  expect((await draft('rules')).content).toMatchObject({ name: 'Lantern Forty 2' })
})

async function openWall(meeting: EnteredMeeting): Promise<Page> {
  const page = await house.screen('pitWall', 'Wall tablet')
  await page.goto(meeting.path('wall'))
  return page
}

async function openPhone(meeting: EnteredMeeting, name: string): Promise<Page> {
  const page = await house.screen('crew', 'Phone', { viewport: PHONE })
  await page.goto(meeting.path('driver'))
  await page.getByRole('button', { name }).click()
  return page
}

/** A button that replaced another under the thumb sleeps first. */
async function awake(page: Page, word: string): Promise<void> {
  const button = verb(page, word)
  await button.waitFor()
  await expect.poll(() => button.getAttribute('aria-disabled')).toBeNull()
}

async function bodies(meeting: EnteredMeeting, kind: string): Promise<readonly unknown[]> {
  const captain = await house.captain()
  const page = entriesPageSchema.parse(
    await captain.call('GET', `/api/meetings/${meeting.id}/entries?after=0`),
  )
  return page.entries
    .filter((entry) => entry.kind === kind)
    .map(({ body }) => JSON.parse(body) as unknown)
}
