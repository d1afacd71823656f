/**
 * How the screens look, on a tablet lying and standing and on a phone, on both papers. Pictures are left
 * in .cache/look.
 *
 * L1  Nobody is kept out: axe finds nothing.
 * L2  Nothing scrolls sideways and no word or figure is cut off.
 * L3  What is pressed is at least 48 px each way, a verb 76 px high.
 * L4  Running figures stand out from what is behind them by 7 : 1.
 * L5  At most one part of a screen has the lamp, and it has it where something presses.
 * L6  The driver's figure is as wide as the phone and 14 mm high; lying down, a fifth of the height.
 * L7  No page breaks its content security policy or complains.
 */
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { findings, litParts } from './look.ts'
import { House, PHONE, TABLET, TABLET_UPRIGHT } from './screens.ts'
import type { View, Wanted } from './view.ts'
import { VIEWS } from './views.ts'

const PICTURES = join(import.meta.dirname, '../../.cache/look')
/** Colours depend on the paper, parts on the size, neither on both: four of six show everything, two do for axe. */
const LOOKS = [
  { size: TABLET, papers: ['dark', 'light'] },
  { size: TABLET_UPRIGHT, papers: ['dark'] },
  { size: PHONE, papers: ['light'] },
] as const
const AXE_AT = ['1180x820-dark', '390x844-light']
/** 14 mm at 96 dots an inch. */
const DIGIT_PX = 53

let house: House
beforeAll(async () => {
  house = await House.open()
})
afterAll(async () => {
  await house.close()
})

const [first, ...others] = VIEWS

/** Alone: the others make meetings, and it is about a house without any. */
it.for(first ? [first] : [])('L1–L5, L7: $name', { timeout: 240_000 }, lookAt)
it.concurrent.for(others)('L1–L5, L7: $name', { timeout: 240_000 }, lookAt)

async function lookAt(view: View): Promise<void> {
  const page = await show(view)
  const found: string[] = []
  for (const { size, papers } of LOOKS) {
    await page.setViewportSize(size)
    for (const colorScheme of papers) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
      await drawn(page)
      const at = `${size.width}x${size.height}-${colorScheme}`
      const name = `${view.name.replaceAll(/\W+/g, '-')}-${at}`
      await page.screenshot({ path: join(PICTURES, `${name}.png`) })
      const here = [...(await findings(page)), ...(await lamps(page, view))]
      if (AXE_AT.includes(at)) here.push(...(await axe(page)))
      found.push(...here.map((finding) => `${name}: ${finding}`))
    }
  }
  await page.context().close()
  expect([...found, ...house.complaints.splice(0)]).toEqual([])
}

it('L6 the driver’s figure is as large as the phone lets it be', async () => {
  const driving = VIEWS.find(({ name }) => name === 'driver, driving')
  if (!driving) throw new Error('Nobody drives.')
  const page = await show(driving)
  await page.setViewportSize(PHONE)
  await drawn(page)
  const upright = await largestFigure(page)
  expect(upright.width).toBeGreaterThan(PHONE.width * 0.8)
  expect(upright.digitPx).toBeGreaterThanOrEqual(DIGIT_PX)

  await page.setViewportSize({ width: PHONE.height, height: PHONE.width })
  await drawn(page)
  const lying = await largestFigure(page)
  expect(lying.digitPx).toBeGreaterThanOrEqual(PHONE.width / 5)
})

async function show(view: View): Promise<Page> {
  const { page, path } = await view.open(house)
  await page.goto(path)
  await view.ready(page)
  return page
}

/** Fonts are there, and what a change of size or paper brings about has been painted. */
async function drawn(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await document.fonts.ready
    for (let frames = 0; frames < 3; frames += 1) await new Promise(requestAnimationFrame)
  })
}

async function axe(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).setLegacyMode().analyze()
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html }) => `${id}: ${html.slice(0, 120)}`),
  )
}

async function lamps(page: Page, { lit }: View): Promise<readonly string[]> {
  const parts = await litParts(page)
  const right: Record<Wanted, boolean> = { none: parts === 0, one: parts === 1 }
  return right[lit] ? [] : [`${parts} parts are lit, not ${lit}`]
}

/** Its width, and the height of its digits as they are drawn. */
function largestFigure(page: Page): Promise<{ width: number; digitPx: number }> {
  return page.evaluate(() => {
    const sizeOf = (element: Element) => parseFloat(getComputedStyle(element).fontSize)
    const [largest] = [...document.querySelectorAll('main span')]
      .filter((element) => /^\d+:\d\d$/.test(element.textContent))
      .sort((a, b) => sizeOf(b) - sizeOf(a))
    const pen = document.createElement('canvas').getContext('2d')
    if (!largest || !pen) return { width: 0, digitPx: 0 }
    const { fontWeight, fontSize, fontFamily } = getComputedStyle(largest)
    pen.font = `${fontWeight} ${fontSize} ${fontFamily}`
    const digitPx = pen.measureText('8').actualBoundingBoxAscent
    return { width: largest.getBoundingClientRect().width, digitPx }
  })
}
