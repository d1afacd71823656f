/**
 * A page whose device has clocks of its own: shifted, drifting, and able to sleep. The true clock stays
 * reachable beside them, so that what is shown can be timed.
 */
import type { Page } from 'playwright-core'

export interface Skew {
  /** What the device's wall clock is ahead of the truth by. */
  readonly shiftMs: number
  /** How fast both of its clocks run, parts per million. */
  readonly ppm: number
}

/** Both ways of this device's network, with up to `jitterMs` on top of each. */
export interface Ways {
  readonly upMs: number
  readonly downMs: number
  readonly jitterMs: number
}

declare global {
  interface Window {
    /** Milliseconds since 1970 by the machine's own clock. */
    trueNow: () => number
    /** From now on `performance.now` stands for so long while `Date` goes on, as on a closed laptop. */
    sleepFor: (ms: number) => void
  }
}

export async function skewed(page: Page, skew: Skew): Promise<void> {
  await page.addInitScript(({ shiftMs, ppm }: Skew) => {
    const { timeOrigin } = performance
    const truePerformance = performance.now.bind(performance)
    const rate = 1 + ppm * 1e-6
    let sleeping: { from: number; ms: number } | undefined
    const slept = (now: number) => (sleeping ? Math.min(now - sleeping.from, sleeping.ms) : 0)
    const localNow = () => {
      const now = truePerformance()
      return (now - slept(now)) * rate
    }
    const wallNow = () => Math.floor(timeOrigin + shiftMs + truePerformance() * rate)
    window.trueNow = () => timeOrigin + truePerformance()
    window.sleepFor = (ms) => (sleeping = { from: truePerformance(), ms })
    performance.now = localNow
    window.Date = new Proxy(Date, {
      construct: (target, given: unknown[]) =>
        Reflect.construct(target, given.length === 0 ? [wallNow()] : given) as object,
      get: (target, key) => (key === 'now' ? wallNow : (Reflect.get(target, key) as unknown)),
    })
  }, skew)
}

/** Frames keep their order and take their time. `blindMs`: the server's time in every probe is replaced by this clock. */
export async function delayed(page: Page, ways: Ways, blindShiftMs?: number): Promise<void> {
  await page.routeWebSocket(/socket\.io/, (socket) => {
    const server = socket.connectToServer()
    const up = inOrder(ways.upMs, ways.jitterMs)
    const down = inOrder(ways.downMs, ways.jitterMs)
    socket.onMessage((frame) => up(() => server.send(frame)))
    server.onMessage((frame) => {
      const said = blindShiftMs === undefined ? frame : blinded(String(frame), blindShiftMs)
      down(() => socket.send(said))
    })
  })
}

function inOrder(delayMs: number, jitterMs: number): (deliver: () => void) => void {
  let last = Promise.resolve()
  let turn = 0
  return (deliver) => {
    // The same uneven steps in every run: 0, 0.38, 0.76, 0.15 … of the jitter.
    const dueMs = performance.now() + delayMs + jitterMs * ((turn++ * 0.382) % 1)
    last = last.then(async () => {
      const leftMs = dueMs - performance.now()
      if (leftMs > 0) await new Promise((resolve) => setTimeout(resolve, leftMs))
      deliver()
    })
  }
}

/** As if nobody had told this screen the time: it believes its own clock. */
function blinded(frame: string, shiftMs: number): string {
  return frame.replace(/"t1":[\d.]+,"t2":[\d.]+/, () => {
    const own = Date.now() + shiftMs
    return `"t1":${own},"t2":${own}`
  })
}

/** When, by the true clock, each text of the segment's countdown came up, for so long. */
export async function turnovers(page: Page, forMs: number): Promise<ReadonlyMap<string, number>> {
  const seen = await page.evaluate(
    (ms) =>
      new Promise<[string, number][]>((resolve) => {
        const header = document.querySelector('[role="banner"], header')
        if (!header) throw new Error('There is no header with a clock.')
        const shown = () => /\d+(?::\d\d)+/.exec(header.textContent)?.[0] ?? ''
        const list: [string, number][] = []
        let before = shown()
        const watch = new MutationObserver(() => {
          const text = shown()
          if (text !== before) list.push([text, window.trueNow()])
          before = text
        })
        watch.observe(header, { subtree: true, childList: true, characterData: true })
        setTimeout(() => {
          watch.disconnect()
          resolve(list)
        }, ms)
      }),
    forMs,
  )
  return new Map(seen)
}
