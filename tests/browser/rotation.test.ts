/**
 * The plan drawn by hand.
 *
 * R1  A handover dragged with the mouse moves both spans, and the rules answer; undo takes it back.
 * R2  Keys alone do it all: choose, move, an end, another person, remove.
 * R3  A finger adds a span at an empty place, and drags a chosen one.
 * R4  A span is split at the stop inside it; two people swap.
 * R5  Two people edit: the later one is told, both versions are shown, nothing is overwritten.
 * R6  An earlier version is laid under this one, and brought back.
 * R7  It prints on one page with columns to write in, a whole day as well.
 * R8  The calendar file and the link reach people; a revoked link opens nothing.
 */
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Locator, Page } from 'playwright-core'
import type { Plan, Regulations } from '@pitlamp/race'
import { enterMeeting, IDA, TOM, type EnteredMeeting } from './lantern-forty.ts'
import { House, PHONE, TABLET } from './screens.ts'

const MINUTE_MS = 60_000

let house: House
let meeting: EnteredMeeting
beforeEach(async () => {
  house = await House.open()
  meeting = await enterMeeting(await house.captain())
})
afterEach(async () => {
  await house.close()
  // The browser itself writes every refusal to the console; the page shows it to the person.
  const refused = /Failed to load resource.* (403|409) /
  expect(house.complaints.filter((line) => !refused.test(line))).toEqual([])
})

const span = (page: Page, words: string): Locator =>
  page.getByRole('button', { name: words, exact: true })
const idaFirst = (to: string) => `Ida Quill drives in Segment 1 from 0:00 to ${to}`
const tomSecond = (from: string) => `Tom Wick drives in Segment 1 from ${from} to 0:27`

async function rotation(options: Parameters<House['screen']>[2] = {}): Promise<Page> {
  const page = await house.screen('captain', 'Laptop', { viewport: TABLET, ...options })
  await page.goto(meeting.path('rotation'))
  await span(page, idaFirst('0:13')).waitFor()
  return page
}

async function savedPlan(): Promise<Plan> {
  const captain = await house.captain()
  const draft = await captain.call('GET', `/api/meetings/${meeting.id}/documents/plan`)
  return (draft as { content: Plan }).content
}

const savePlan = (change: (plan: Plan) => Plan) => save('plan', change)

/** Another device of the captain's saves the document it has just read. */
async function save<C>(document: string, change: (content: C) => C): Promise<void> {
  const captain = await house.captain()
  const path = `/api/meetings/${meeting.id}/documents/${document}`
  const draft = (await captain.call('GET', path)) as { version: number; content: C }
  await captain.call('PUT', path, { basedOn: draft.version, content: change(draft.content) })
}

const saved = (page: Page) => page.getByText('draft saved').waitFor()

it('R1 a handover dragged with the mouse moves both spans, and undo takes it back', async () => {
  const page = await rotation()
  await page.getByText('In segment 2 there are no mandatory stops').first().waitFor()
  await span(page, idaFirst('0:13')).click()
  const end = page.getByRole('slider', { name: `${idaFirst('0:13')}: ends` })
  const box = await end.boundingBox()
  if (!box) throw new Error('The end of the span is not drawn.')
  const [x, y] = [box.x + 14, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 20, y, { steps: 4 })
  await page.mouse.up()
  // 90 min on the strip: 20 px are a few minutes, wherever exactly; both spans go along.
  const moved = page.getByRole('button', {
    name: /Ida Quill drives in Segment 1 from 0:00 to 0:1[4-9]/,
  })
  await moved.waitFor()
  const to = /to (\d:\d\d)$/.exec((await moved.getAttribute('aria-label')) ?? '')?.[1] ?? ''
  await span(page, tomSecond(to)).waitFor()
  await saved(page)
  const plan = await savedPlan()
  const [ends, begins] = [
    plan.spans.find(({ id }) => id === 's1-0-drive')?.toMs,
    plan.spans.find(({ id }) => id === 's1-13-drive')?.fromMs,
  ]
  expect(ends).toBe(begins)
  expect(ends).toBeGreaterThan(13 * MINUTE_MS)

  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await span(page, idaFirst('0:13')).waitFor()
  await span(page, tomSecond('0:13')).waitFor()
})

it('R2 keys alone choose, move, change an end, the person, and remove', async () => {
  const page = await rotation()
  await span(page, idaFirst('0:13')).focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Tab')
  // The end: five steps later and one back; every step is a minute, since a minute is wide enough.
  await page.keyboard.press('PageUp')
  await page.keyboard.press('ArrowLeft')
  await span(page, idaFirst('0:17')).waitFor()
  await span(page, tomSecond('0:17')).waitFor()

  await span(page, 'Ida Quill drives in Segment 2 from 0:00 to 0:40').focus()
  await page.keyboard.press('ArrowDown')
  await span(page, 'Tom Wick drives in Segment 2 from 0:00 to 0:40').waitFor()
  await page
    .getByText(/Tom Wick.*(two|both|at once)/i)
    .first()
    .waitFor()

  await span(page, 'Tom Wick drives in Segment 2 from 0:00 to 0:40').focus()
  await page.keyboard.press('Delete')
  await span(page, 'Tom Wick drives in Segment 2 from 0:00 to 0:40').waitFor({ state: 'detached' })
  await page
    .getByText(/nobody drives/i)
    .first()
    .waitFor()
})

it('R3 a finger adds a span at an empty place, and drags a chosen one', async () => {
  await savePlan((plan) => ({ ...plan, spans: plan.spans.filter(({ id }) => id !== 's2-0-drive') }))
  const page = await rotation({ viewport: PHONE, hasTouch: true, isMobile: true })
  const second = await page.getByText('Segment 2', { exact: true }).first().boundingBox()
  const row = await span(page, idaFirst('0:13')).boundingBox()
  if (!second || !row) throw new Error('The strip is not drawn.')
  await page.touchscreen.tap(second.x + 6, row.y + row.height / 2)
  await page.getByRole('region', { name: 'What is chosen' }).getByText('Ida Quill').waitFor()
  await page.getByRole('button', { name: 'drives', exact: true }).tap()
  const added = page.getByRole('button', { name: /Ida Quill drives in Segment 2/ })
  await added.waitFor()
  const before = (await added.getAttribute('aria-label')) ?? ''
  await drag(page, added, [0, 60])
  await page.getByRole('button', { name: before.replace('Ida Quill', 'Tom Wick') }).waitFor()
})

/** A finger that holds, moves and lets go, as the browser itself sends it. */
async function drag(page: Page, part: Locator, [dx, dy]: readonly [number, number]): Promise<void> {
  const box = await part.boundingBox()
  if (!box) throw new Error('There is nothing to drag.')
  const touch = await page.context().newCDPSession(page)
  const at = (share: number) => [
    {
      x: box.x + box.width / 2 + dx * share,
      y: box.y + box.height / 2 + dy * share,
    },
  ]
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) })
  for (const share of [0.3, 0.6, 1]) {
    await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(share) })
  }
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
}

it('R4 a span is split at the stop inside it; two people swap', async () => {
  await savePlan((plan) => ({
    ...plan,
    stops: [...plan.stops, { id: 't3', segment: 's2', atMs: 15 * MINUTE_MS, mandatory: true }],
  }))
  const page = await rotation()
  await span(page, 'Ida Quill drives in Segment 2 from 0:00 to 0:40').click()
  await page.getByRole('button', { name: 'Split' }).click()
  await span(page, 'Ida Quill drives in Segment 2 from 0:00 to 0:15').waitFor()
  await span(page, 'Ida Quill drives in Segment 2 from 0:15 to 0:40').click()
  await page.getByRole('button', { name: 'Swap with …' }).click()
  await span(page, tomSecond('0:13')).click()
  await span(page, 'Tom Wick drives in Segment 2 from 0:15 to 0:40').waitFor()
  await span(page, 'Ida Quill drives in Segment 1 from 0:13 to 0:27').waitFor()
})

it('R5 two people edit: the later one is told, both are shown, nothing is overwritten', async () => {
  const page = await rotation()
  await savePlan((plan) => ({ ...plan, spans: plan.spans.filter(({ id }) => id !== 's1-27-wall') }))
  await span(page, idaFirst('0:13')).click()
  await page.getByRole('slider', { name: /ends$/ }).focus()
  await page.keyboard.press('ArrowRight')
  await page.getByText('somebody else saved them while you wrote').waitFor()
  expect((await savedPlan()).spans.some(({ id }) => id === 's1-27-wall')).toBe(false)
  await page.getByRole('button', { name: 'Keep mine' }).click()
  await saved(page)
  const kept = await savedPlan()
  expect(kept.spans.find(({ id }) => id === 's1-0-drive')?.toMs).toBe(14 * MINUTE_MS)
  expect(kept.spans.some(({ id }) => id === 's1-27-wall')).toBe(true)
})

it('R6 an earlier version is laid under this one, and brought back', async () => {
  const page = await rotation()
  await span(page, idaFirst('0:13')).click()
  await page.getByRole('button', { name: 'Remove', exact: true }).click()
  await saved(page)
  await page.getByText('Earlier versions').click()
  await page.getByRole('button', { name: 'Compare with version 1' }).click()
  await page.getByRole('button', { name: 'Compare with version 1', pressed: true }).waitFor()
  await page.getByRole('button', { name: 'Bring back version 1' }).click()
  await span(page, idaFirst('0:13')).waitFor()
  await saved(page)
  expect((await savedPlan()).spans.some(({ id }) => id === 's1-0-drive')).toBe(true)
})

it('R7 it prints on one page with columns to write in, a whole day as well', async () => {
  const page = await rotation()
  expect(await pagesOf(page)).toBe(1)
  await page.emulateMedia({ media: 'print' })
  const sheet = page.locator('article')
  for (const words of ['Done at', 'Laps', 'Mandatory stop: Change driver', 'as of']) {
    expect(await sheet.getByText(words).first().isVisible()).toBe(true)
  }
  expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false)
  await page.emulateMedia({ media: null })

  await saveADay()
  await page.reload()
  await page.getByText('Send it to people').waitFor()
  expect(await pagesOf(page)).toBe(1)
})

/** A segment of twenty-four hours, 96 stints of a quarter of an hour, a marshal each, a stop every hour. */
async function saveADay(): Promise<void> {
  const segment = 's1'
  const quarter = (place: number) => ({
    fromMs: place * 15 * MINUTE_MS,
    toMs: (place + 1) * 15 * MINUTE_MS,
  })
  const turn = (place: number) => (place % 2 === 0 ? [IDA, TOM] : [TOM, IDA])
  const length = { by: 'time' as const, lengthMs: 1_440 * MINUTE_MS }
  const programme: Regulations['programme'] = [{ id: segment, kind: 'segment', length }]
  await save('rules', (rules: Regulations) => ({ ...rules, programme }))
  await savePlan((plan) => ({
    ...plan,
    spans: Array.from({ length: 96 }, (_, place) => [
      {
        id: `d${place}`,
        segment,
        duty: 'controller' as const,
        person: turn(place)[0] ?? IDA,
        ...quarter(place),
      },
      {
        id: `m${place}`,
        segment,
        duty: 'post' as const,
        post: '2',
        person: turn(place)[1] ?? TOM,
        ...quarter(place),
      },
    ]).flat(),
    stops: Array.from({ length: 23 }, (_, place) => ({
      ...{ id: `t${place}`, segment, atMs: (place + 1) * 60 * MINUTE_MS, mandatory: true },
    })),
  }))
}

/** Pages of the PDF that Chromium prints on A4. */
async function pagesOf(page: Page): Promise<number> {
  const pdf = await page.pdf({
    format: 'A4',
    margin: { top: '10mm', bottom: '10mm', left: '10mm', right: '10mm' },
  })
  return pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)?.length ?? 0
}

it('R8 the calendar file and the link reach people; a revoked link opens nothing', async () => {
  const page = await rotation()
  await page.getByLabel('Calendar for').selectOption('Tom Wick')
  const file = page.getByRole('link', { name: 'Calendar file' })
  const [download] = await Promise.all([page.waitForEvent('download'), file.click()])
  expect(download.suggestedFilename()).toMatch(/\.ics$/)

  await page.getByRole('button', { name: 'Link', exact: true }).click()
  const link = await page.getByLabel(/Whoever has it/).inputValue()
  const anybody = await house.blank({ viewport: PHONE })
  await anybody.goto(link)
  await anybody.getByRole('heading', { name: 'Lantern Forty' }).waitFor()
  await anybody.getByLabel('Whose part').selectOption('Tom Wick')
  await anybody.getByText('drives').first().waitFor()
  expect(await anybody.getByRole('cell', { name: 'Bea Lorne' }).count()).toBe(0)

  await page.getByRole('button', { name: 'Revoke all links' }).click()
  await page.getByText('No link opens this plan any more.').waitFor()
  await anybody.reload()
  await anybody.getByRole('alert').waitFor()
})
