import type { RuleValue } from '../../rules/index.ts'
import { firstToClose } from '../../rules/first-to-close.ts'
import { known } from '../../rules/shape.ts'
import type { TimelineStop } from '../../timeline/stops.ts'
import type { Bench } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { countInWords, durationInWords } from '../in-words.ts'
import { cameToMs, stopName } from './in-segments.ts'

type Window = Exclude<RuleValue<'stopWindows'>['windows'], string>[number]

/** Both ends of a window belong to it. A stop serves one window, and each window is served once. */
export const stopWindows: Check<'stopWindows'> = {
  axis: 'race',
  limits: ({ windows }, bench) => {
    const named = known(windows)
    if (named === undefined) return []
    const stops = bench.mandatoryStops
    return [
      { name: 'served', called: 'A stop in each window', cases: served(named, stops, bench) },
      {
        name: 'inWindow',
        called: 'Each stop in a window',
        cases: stops.map((stop) => inWindow(stop, named, bench)),
      },
    ]
  },
}

function served(
  windows: readonly Window[],
  stops: readonly TimelineStop[],
  bench: Bench,
): readonly Case[] {
  const serving = new Map<string, TimelineStop>()
  for (const stop of stops) {
    const open = windows.filter((one) => isIn(stop, one) && !serving.has(one.id))
    const window = firstToClose(open)
    if (window) serving.set(window.id, stop)
  }
  return windows.flatMap((window): readonly Case[] => {
    const segment = bench.timeline.segments.find(({ id }) => id === window.segment)
    if (!segment) return []
    const stop = serving.get(window.id)
    return [
      {
        sense: 'atLeast',
        unit: 'count',
        limit: 1,
        value: stop ? 1 : 0,
        at: stop?.at ?? segment.startsAt + window.toMs,
        stops: stop ? [stop.id] : [],
        ...(cameToMs(bench, segment) <= window.toMs && !segment.over ? { untilTheEnd: true } : {}),
        says: () =>
          `There is ${countInWords(stop ? 1 : 0, 'mandatory stop', 'mandatory stop')} from ${durationInWords(window.fromMs)} to ${durationInWords(window.toMs)} of ${bench.segmentName(window.segment)}.`,
      },
    ]
  })
}

/** Held against the edge that is closer: that of its window, or of the nearest one where it lies in none. */
function inWindow(stop: TimelineStop, windows: readonly Window[], bench: Bench): Case {
  const here = windows.filter(({ segment }) => segment === stop.segment)
  const nearest = here.reduce<Window | undefined>(
    (best, one) => (best === undefined || inside(stop, one) > inside(stop, best) ? one : best),
    undefined,
  )
  const about = { at: stop.at, stops: [stop.id] }
  if (!nearest) {
    return {
      sense: 'atMost',
      unit: 'count',
      limit: 0,
      value: 1,
      ...about,
      says: () => `For ${stopName(bench, stop)} there is no window.`,
    }
  }
  const opens = stop.atMs - nearest.fromMs < nearest.toMs - stop.atMs
  const limit = opens ? nearest.fromMs : nearest.toMs
  return {
    unit: 'ms',
    sense: opens ? 'atLeast' : 'atMost',
    limit,
    value: stop.atMs,
    ...about,
    says: () =>
      `The window of ${stopName(bench, stop)} ${opens ? 'opens' : 'closes'} at ${durationInWords(limit)}.`,
  }
}

/** How far inside a window a stop lies; below 0 outside. */
function inside({ atMs }: TimelineStop, { fromMs, toMs }: Window): number {
  return Math.min(atMs - fromMs, toMs - atMs)
}

function isIn(stop: TimelineStop, window: Window): boolean {
  return stop.segment === window.segment && inside(stop, window) >= 0
}
