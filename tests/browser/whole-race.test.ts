/**
 * The pit wall through a whole race: every verb of every phase, by a thumb and by keys.
 *
 * W1  A verb takes at most two presses, three where it is not of its phase and stands behind More.
 * W2  Nothing has to be typed but numbers on a pad, and each press is large enough for a thumb.
 * W3  The same presses work from a keyboard.
 * W4  What was recorded can be taken back from where it was pressed.
 */
import type { Locator, Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { enterMeeting, type EnteredMeeting, type MeetingOptions } from './lantern-forty.ts'
import { House, verb } from './screens.ts'
import { adoptWhole } from './whole-race.ts'
import { WAYS, type Way } from './whole-race-ways.ts'

const TOUCH_PX = 48
const SLACK_PX = 1
const AT_MOST = 2

const over = ({ press }: EnteredMeeting) => press('segmentEnd.1', { segment: 's1' }, 5)
const off = ({ press }: EnteredMeeting) => press('trackCall.1', {}, 5)
const PHASES = [
  { phase: 'before', first: 'Green' },
  { phase: 'green', minutes: 6, first: 'De-slot' },
  { phase: 'powerOff', minutes: 6, happens: off, first: 'Power is on' },
  { phase: 'between', minutes: 40, happens: over, first: 'Measure' },
] as const satisfies readonly Phase[]

interface Phase {
  readonly phase: keyof typeof WAYS
  readonly minutes?: MeetingOptions['minutesAfterGreen']
  readonly happens?: (meeting: EnteredMeeting) => Promise<unknown>
  /** A verb that stands there once the race does. */
  readonly first: string
}

it.for(PHASES)('W1 counts the presses of every verb: $phase', ({ phase }) => {
  const counted = WAYS[phase].map(({ verb, presses }) => [verb, presses.length] as const)
  const most = WAYS[phase].map(({ behindMore }) => (behindMore ? AT_MOST + 1 : AT_MOST))
  expect(counted.filter(([, count], i) => count > (most[i] ?? 0))).toEqual([])
})

it.for(PHASES)('W2, W4 by a thumb: $phase', { timeout: 240_000 }, (phase) => all(phase, tap))

it.for(PHASES)('W3, W4 by keys: $phase', { timeout: 240_000 }, (phase) => all(phase, strike))

async function all(phase: Phase, hand: Hand): Promise<void> {
  const house = await House.open()
  try {
    const wall = await standing(house, phase)
    for (const way of WAYS[phase.phase]) {
      await go(wall, way, hand)
      await takeBack(wall, phase.first)
    }
  } finally {
    await house.close()
  }
  expect(house.complaints).toEqual([])
}

async function standing(house: House, { minutes, happens, first }: Phase): Promise<Page> {
  const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: minutes })
  await adoptWhole(meeting)
  await happens?.(meeting)
  const wall = await house.screen('pitWall', 'Tablet')
  await wall.goto(meeting.path('wall'))
  await verb(wall, first).waitFor()
  return wall
}

interface Hand {
  readonly digit: (page: Page, digit: string) => Promise<void>
  readonly press: (page: Page, button: Locator) => Promise<void>
}

/** On something large enough for a thumb; digits on the pad. */
const tap: Hand = {
  digit: async (page, digit) => {
    const name = digit === '.' ? 'Decimal point' : digit
    await page.getByRole('dialog').getByRole('button', { name, exact: true }).click()
  },
  press: async (_page, button) => {
    const box = await button.boundingBox()
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(TOUCH_PX - SLACK_PX)
    await button.click()
  },
}

/** A verb of the bar by its number, anything else by Enter on it. */
const strike: Hand = {
  digit: (page, digit) => page.keyboard.press(digit),
  press: async (page, button) => {
    const key = await button.getAttribute('aria-keyshortcuts')
    await (key === null ? button.press('Enter') : page.keyboard.press(key))
  },
}

async function go(page: Page, way: Way, hand: Hand): Promise<void> {
  for (const [step, press] of way.presses.entries()) {
    if (step === way.presses.length - 1) await type(page, way.digits ?? '', hand)
    const button = buttonOf(page, press, step)
    await button.waitFor()
    await awake(page)
    await hand.press(page, button)
  }
  await page.getByText(`${way.says} recorded`).or(undoCarIn(page)).first().waitFor()
}

/** Digits as they stand on the pad; `›` goes on from our place to our laps. */
async function type(page: Page, digits: string, hand: Hand): Promise<void> {
  for (const digit of digits) {
    if (digit === '›') await hand.press(page, buttonOf(page, { button: /^Our laps/ }, 1))
    else await hand.digit(page, digit)
  }
}

function buttonOf(page: Page, press: Way['presses'][number], step: number): Locator {
  if (typeof press === 'string') return verb(page, press)
  const { button } = press
  const within = step === 0 ? page.getByRole('main') : page.getByRole('dialog')
  const named = { name: button, exact: true }
  const inSheetOrColumn = within.getByRole('button', named).or(within.getByRole('checkbox', named))
  const found = step === 0 ? inSheetOrColumn.or(inBanner(page, button)) : inSheetOrColumn
  return found.first()
}

function inBanner(page: Page, button: string | RegExp): Locator {
  return page.getByRole('banner').getByRole('button', { name: button, exact: true })
}

function undoCarIn(page: Page): Locator {
  return page.getByRole('button', { name: 'Undo car in' })
}

async function takeBack(page: Page, first: string): Promise<void> {
  const undo = page.getByRole('button', { name: 'Undo', exact: true }).or(undoCarIn(page))
  await awake(page)
  await undo.first().click()
  await undo.first().waitFor({ state: 'detached' })
  const sheet = page.getByRole('dialog')
  if (await sheet.isVisible()) await page.keyboard.press('Escape')
  await verb(page, first).waitFor()
}

/** A verb that has just changed its meaning sleeps. */
async function awake(page: Page): Promise<void> {
  await page.waitForFunction(() => !document.querySelector('[aria-disabled="true"]'))
}
