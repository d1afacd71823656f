import { known } from '../../rules/shape.ts'
import { driversWho, type BenchPerson } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { apart } from '../stints.ts'
import type { Stretch } from '../stretches.ts'

/**
 * At every instant, in meeting time. Let D(t) be what is driven from t to before t + W. D is a continuous line of
 * straight pieces: it rises while the window's end lies in a piece of driving and its beginning does not, falls in
 * the opposite case, and is level otherwise. So it stops rising only where the window's end leaves a piece or its
 * beginning enters one, and, being 0 far out on both sides, is largest at one of these: a window that begins with a
 * piece or ends with one. Two windows a piece, each by one search in running sums: O(n log n) for n pieces.
 *
 * Windows that break it and overlap are one breach, said by the worst of them. A window is decided by the last
 * driving in it.
 */
export const rollingDriving: Check<'rollingDriving'> = {
  axis: 'meeting',
  limits: ({ who, atMostMs, withinMs }, bench) => {
    const [limit, window] = [known(atMostMs), known(withinMs)]
    if (limit === undefined || window === undefined) return []
    const cases = driversWho(bench, who).flatMap((driver) => {
      const said = toSay(windowsOf(driver.driven, window), limit)
      return said.map((one) => caseOf(driver, one, limit))
    })
    return [{ name: 'atMost', called: `In any ${durationInWords(window)} at most`, cases }]
  },
}

interface Window extends Stretch {
  readonly drivenMs: number
  /** When the last driving in it ends. */
  readonly decidedAt: number
}

/** The windows of a length among which is the worst, in order of beginning; none of no driving. */
export function windowsOf(driven: readonly Stretch[], windowMs: number): readonly Window[] {
  const pieces = apart([...driven].sort((a, b) => a.fromAt - b.fromAt))
  const sums = [0]
  for (const { fromAt, toAt } of pieces) sums.push((sums.at(-1) ?? 0) + toAt - fromAt)
  /** Everything driven before an instant. */
  const before = (at: number) => {
    const place = begunBefore(pieces, at)
    const last = pieces[place - 1]
    return last ? (sums[place - 1] ?? 0) + Math.min(at, last.toAt) - last.fromAt : 0
  }
  const windowFrom = (fromAt: number): Window => {
    const toAt = fromAt + windowMs
    const last = pieces[begunBefore(pieces, toAt) - 1]
    const decidedAt = Math.min(toAt, last?.toAt ?? toAt)
    return { fromAt, toAt, drivenMs: before(toAt) - before(fromAt), decidedAt }
  }
  return pieces
    .flatMap(({ fromAt, toAt }) => [windowFrom(fromAt), windowFrom(toAt - windowMs)])
    .sort((a, b) => a.fromAt - b.fromAt)
}

/** How many pieces have begun before an instant. */
function begunBefore(pieces: readonly Stretch[], at: number): number {
  let [low, high] = [0, pieces.length]
  while (low < high) {
    const middle = (low + high) >> 1
    const piece = pieces[middle]
    if (piece && piece.fromAt < at) low = middle + 1
    else high = middle
  }
  return low
}

/** Every window that keeps it, and of those that break it and overlap the worst. */
function toSay(windows: readonly Window[], limit: number): readonly Window[] {
  const said: Window[] = []
  let breach: Window | undefined
  let reachedAt = -Infinity
  for (const window of windows) {
    if (window.drivenMs <= limit) {
      said.push(window)
      continue
    }
    if (breach && window.fromAt >= reachedAt) said.push(breach)
    const isNew = !breach || window.fromAt >= reachedAt
    if (isNew || window.drivenMs > (breach?.drivenMs ?? 0)) breach = window
    reachedAt = window.toAt
  }
  return breach ? [...said, breach] : said
}

function caseOf(
  { id, name, driving, drivingIds }: BenchPerson,
  window: Window,
  limit: number,
): Case {
  const { fromAt, toAt, drivenMs, decidedAt } = window
  const end = begunBefore(driving, toAt)
  let begin = end
  while ((driving[begin - 1]?.toAt ?? fromAt) > fromAt) begin -= 1
  return {
    sense: 'atMost',
    unit: 'ms',
    limit,
    value: drivenMs,
    at: decidedAt,
    people: [id],
    spans: drivingIds.slice(begin, end),
    says: () =>
      `${name} drives ${durationInWords(drivenMs)} within ${durationInWords(toAt - fromAt)}, at most ${durationInWords(limit)}.`,
  }
}
