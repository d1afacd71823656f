/**
 * The pit wall through a whole race: every verb of every phase, by a thumb and by keys.
 *
 * W1  A verb takes at most two presses, and there is a way for each that the wall offers.
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
/** A fault is being mended in it. */
const carIn = async ({ press }: EnteredMeeting) => {
  const fault = await press('faultNoted.1', { fault: 'Lights' }, 60)
  await press('stopIn.1', { moment: 'stopped' }, 30)
  await press('repairStarted.1', { fault }, 20)
}
const flag = async ({ press }: EnteredMeeting) => {
  await press('segmentEnd.1', { segment: 's1' }, 3_000)
  await press('green.1', { segment: 's2' }, 2_900)
  await press('segmentEnd.1', { segment: 's2' }, 500)
}
const PHASES = [
  { phase: 'before', first: 'Green' },
  { phase: 'green', minutes: 6, first: 'De-slot' },
  { phase: 'powerOff', minutes: 6, happens: off, first: 'Power is on' },
  { phase: 'between', minutes: 40, happens: over, first: 'Measure' },
  { phase: 'stop', minutes: 6, happens: carIn, first: 'Car out' },
  { phase: 'finished', minutes: 92, happens: flag, first: 'Note' },
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
  expect(counted.filter(([, count]) => count > AT_MOST)).toEqual([])
})

it.for(PHASES)('W1, W2, W4 by a thumb: $phase', { timeout: 240_000 }, (phase) => all(phase, tap))

it.for(PHASES)('W3, W4 by keys: $phase', { timeout: 240_000 }, (phase) => all(phase, strike))

async function all(phase: Phase, hand: Hand): Promise<void> {
  const house = await House.open()
  try {
    const wall = await standing(house, phase)
    await knowsAllThatIsOffered(wall, phase)
    for (const way of WAYS[phase.phase] as readonly Way[]) {
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

async function knowsAllThatIsOffered(wall: Page, { phase, first }: Phase): Promise<void> {
  const known = new Set<string>(['More', ...WAYS[phase].map(({ verb }) => verb)])
  const offered = await wordsOf(wall.getByRole('toolbar', { name: 'What happened' }))
  expect(offered).toContain(first)
  await awake(wall)
  await onBar(wall, 'More').click()
  offered.push(...(await wordsOf(wall.getByRole('group', { name: 'More', exact: true }))))
  await wall.keyboard.press('Escape')
  expect(offered.filter((word) => !known.has(word))).toEqual([])
}

/** The words of all buttons in it, without hints and keys. */
async function wordsOf(part: Locator): Promise<string[]> {
  await part.waitFor()
  const words = part.getByRole('button').locator('span:first-child')
  return (await words.allInnerTexts()).map((word) => word.trim())
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
  if (typeof press === 'string') return onBar(page, press)
  const { button } = press
  const within = step === 0 ? page.getByRole('main') : page.getByRole('dialog')
  const named = { name: button, exact: true }
  const inSheetOrColumn = within.getByRole('button', named).or(within.getByRole('checkbox', named))
  const found = step === 0 ? inSheetOrColumn.or(inBanner(page, button)) : inSheetOrColumn
  return found.first()
}

/** *More work* stands beside *More*. */
function onBar(page: Page, word: string): Locator {
  return verb(page, word === 'More' ? 'More(?! work)' : word)
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
