/**
 * What the browser tests share: the real server, a real Chromium, and devices of a team each with a
 * screen of its own. Everything a page complains of is collected: what it writes to the console as an
 * error, what it throws, what the content security policy stopped.
 */
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core'
import type { Role } from '@pitlamp/race'
import { join, type Device } from '../device.ts'
import { startServer, type RunningServer, type ServerOptions } from '../running-server.ts'
import { launchChromium } from './chromium.ts'

export const TABLET = { width: 1180, height: 820 }
export const TABLET_UPRIGHT = { width: 820, height: 1180 }
export const PHONE = { width: 390, height: 844 }

/** The browser itself writes these when a server is gone; no page can keep it from doing so. */
const OF_THE_NETWORK = /net::ERR_|WebSocket connection to/

export class House {
  server: RunningServer
  readonly browser: Browser
  readonly complaints: string[] = []
  #captain: Promise<Device> | undefined

  static async open(options: ServerOptions = {}): Promise<House> {
    const [server, browser] = await Promise.all([startServer(options), launchChromium()])
    return new House(server, browser)
  }

  private constructor(server: RunningServer, browser: Browser) {
    this.server = server
    this.browser = browser
  }

  /** A captain's device without a picture. The first time it is asked for, it joins with the printed code. */
  captain(): Promise<Device> {
    this.#captain ??= this.server
      .captainCode()
      .then((code) => join(this.server.url, code, 'Captain’s laptop'))
    return this.#captain
  }

  /** A browser of its own, as on a device that has joined nothing yet. */
  async blank(options: BrowserContextOptions = {}): Promise<Page> {
    const context = await this.browser.newContext({
      baseURL: this.server.url,
      viewport: TABLET,
      ...options,
    })
    context.setDefaultTimeout(15_000)
    await context.addInitScript(() =>
      addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
        console.error(`securitypolicyviolation: ${violatedDirective} ${blockedURI}`),
      ),
    )
    const page = await context.newPage()
    page.on('pageerror', (error) => this.complaints.push(`thrown: ${String(error)}`))
    page.on('console', (message) => {
      if (message.type() !== 'error' || OF_THE_NETWORK.test(message.text())) return
      this.complaints.push(`${message.text()} (${message.location().url})`)
    })
    return page
  }

  /** The screen of a device that has joined the team; it shows nothing yet. */
  async screen(role: Role, name: string, options: BrowserContextOptions = {}): Promise<Page> {
    const captain = await this.captain()
    const device = await captain.invite(role, name)
    const page = await this.blank(options)
    const [cookie = '', value = ''] = (device.headers['cookie'] ?? '').split('=')
    await page.context().addCookies([{ name: cookie, value, url: this.server.url }])
    return page
  }

  /** The server again, where it was, with what it had. */
  async plugInAgain(): Promise<void> {
    const { port, data } = this.server
    this.server = await startServer({ port, data })
  }

  async close(): Promise<void> {
    await this.browser.close()
    await this.server.stop()
  }
}

/** A verb on the bar along the bottom, by the word on it. */
export function verb(page: Page, word: string): Locator {
  const bar = page.getByRole('toolbar', { name: 'What happened' })
  return bar.getByRole('button', { name: new RegExp(`^${word}`) })
}

/** Something that stands on the sheet More: a verb without a place on the bar, or the way to a screen. */
export async function more(
  page: Page,
  word: string,
  role: 'button' | 'link' = 'button',
): Promise<void> {
  const bar = page.getByRole('toolbar', { name: 'What happened' })
  await bar.getByRole('button', { name: 'More', exact: true }).click()
  const sheet = page.getByRole('dialog', { name: 'More' })
  await sheet.getByRole(role, { name: word, exact: true }).click()
}

/** Clock and power across the top of a race screen. */
export function banner(page: Page): Locator {
  return page.getByRole('banner')
}

/** The first running figure in a part of a screen, in seconds; NaN where there is none. */
export async function figureIn(part: Locator): Promise<number> {
  const [, text = ''] = /(?:^|\s)(\d+(?::\d\d)+)/.exec(await part.innerText()) ?? []
  return text.split(':').reduce((sum, digits) => sum * 60 + Number(digits), text === '' ? NaN : 0)
}
