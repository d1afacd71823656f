/**
 * What is measured on a screen as it stands, in the browser and from computed styles, so that nothing
 * here knows how a screen is built. Every finding is a sentence; an empty list is a good screen.
 */
import type { Page } from 'playwright-core'

const TOUCH_PX = 48
const VERB_PX = 76
const FIGURE_CONTRAST = 7
/** Sizes are laid out in fractions of a pixel. */
const SLACK_PX = 1

export async function findings(page: Page): Promise<readonly string[]> {
  return (await Promise.all([tooWide(page), tooSmall(page), cutOff(page), tooFaint(page)])).flat()
}

function tooWide(page: Page): Promise<string[]> {
  return page.evaluate((slack) => {
    const { scrollWidth } = document.documentElement
    return scrollWidth > innerWidth + slack ? [`scrolls sideways: ${scrollWidth} px wide`] : []
  }, SLACK_PX)
}

/** Everything that can be pressed and is in sight. */
function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate(
    ({ touch, verb, slack }) => {
      const pressable = 'button, a[href], input, select, textarea, summary'
      return [...document.querySelectorAll<HTMLElement>(pressable)].flatMap((element) => {
        const { width, height } = element.getBoundingClientRect()
        if (!element.checkVisibility() || width < 2) return []
        const least = element.closest('[role="toolbar"]') ? verb : touch
        // What is drawn to the scale of time is as wide as it lasts; its ends and a list reach the same.
        const wide = element.dataset['toScale'] !== undefined || width >= touch - slack
        const enough = height >= least - slack && wide
        const words = element.ariaLabel ?? element.textContent.trim()
        return enough ? [] : [`too small: ${words} ${Math.round(width)} × ${Math.round(height)}`]
      })
    },
    { touch: TOUCH_PX, verb: VERB_PX, slack: SLACK_PX },
  )
}

/** Words and running figures; a line of a list that ends in … says so itself, a verb may not. */
function cutOff(page: Page): Promise<string[]> {
  return page.evaluate((slack) => {
    const isFigure = (element: Element) => getComputedStyle(element).fontFamily.includes('Mono')
    const said = 'button, a[href], h1, h2, h3, dt, dd, p, span, b'
    return [...document.querySelectorAll<HTMLElement>(said)].flatMap((element) => {
      if (!element.checkVisibility() || element.closest('.unseen')) return []
      const { display, textOverflow } = getComputedStyle(element)
      const words = element.textContent.trim().slice(0, 40)
      const mayEnd = textOverflow === 'ellipsis' && !element.closest('[role="toolbar"]')
      const isCut = display !== 'inline' && element.scrollWidth > element.clientWidth + slack
      if (isCut && !mayEnd) return [`cut off: ${words}`]
      const { right, left } = element.getBoundingClientRect()
      const isOut = isFigure(element) && (right > innerWidth + slack || left < -slack)
      return isOut ? [`figure runs out of the screen: ${words}`] : []
    })
  }, SLACK_PX)
}

/** Running figures against what lies behind them; glows and other gradients are left out. */
function tooFaint(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const channels = (css: string) => (css.match(/[\d.]+/g) ?? []).map(Number)
    const light = (css: string) =>
      channels(css)
        .slice(0, 3)
        .map((channel) => channel / 255)
        .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4))
        .reduce((sum, part, i) => sum + part * ([0.2126, 0.7152, 0.0722][i] ?? 0), 0)
    const behind = (element: Element): string => {
      const { backgroundColor } = getComputedStyle(element)
      const [, , , alpha = 1] = channels(backgroundColor)
      const { parentElement } = element
      return alpha === 1 || !parentElement ? backgroundColor : behind(parentElement)
    }
    return [...document.querySelectorAll('body *')].flatMap((element) => {
      const style = getComputedStyle(element)
      const text = element.childElementCount === 0 ? element.textContent.trim() : ''
      // 0:00:00 is where nothing has been typed yet.
      const runs = style.fontFamily.includes('Mono') && /\d:\d\d(?<!0:00:00)$/.test(text)
      if (!runs || !element.checkVisibility() || element.closest('.unseen')) return []
      const [dark = 0, bright = 0] = [light(style.color), light(behind(element))].sort(
        (a, b) => a - b,
      )
      const ratio = (bright + 0.05) / (dark + 0.05)
      return ratio >= least ? [] : [`figure too faint: ${text} ${ratio.toFixed(1)} : 1`]
    })
  }, FIGURE_CONTRAST)
}

/** How many parts have the lamp: its colour behind them or along their edge. One within another is the same. */
export function litParts(page: Page): Promise<number> {
  return page.evaluate(() => {
    const lamp = 'rgb(255, 178, 46)'
    const has = (element: Element) => {
      const { backgroundColor, boxShadow } = getComputedStyle(element)
      return backgroundColor === lamp || boxShadow.includes(lamp)
    }
    const lit = [...document.querySelectorAll('body *')].filter(has)
    return lit.filter((part) => !lit.some((other) => other !== part && other.contains(part))).length
  })
}
