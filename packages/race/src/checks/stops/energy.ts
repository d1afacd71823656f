import type { RuleValue } from '../../rules/index.ts'
import { known } from '../../rules/shape.ts'
import type { Bench } from '../bench.ts'
import type { Case, Check, Limit } from '../case.ts'
import { shareDown } from '../driving/shares.ts'
import { countInWords, durationInWords } from '../in-words.ts'
import { placeInWords } from '../places.ts'
import { cameToMs, runSegments } from './in-segments.ts'

/**
 * Running on one load: from green or a stop to the next stop or the end. Every stop is taken to fill the car, and
 * the time it stands there is counted to the running after it, which errs on the safe side. Laps are an estimate
 * from the paces of the crew; where one of them is missing, that running is not judged.
 */
export const energy: Check<'energy'> = {
  axis: 'race',
  limits: (value, bench) => {
    const loads = loadsOf(bench)
    return [...inTime(value, loads, bench), ...inLaps(value, loads, bench)]
  },
}

/** A stretch of a segment's race clock on one load. */
interface Load {
  readonly segment: string
  readonly fromMs: number
  readonly toMs: number
  /** Where it began and ended, as far as those were stops. */
  readonly stops: readonly string[]
  /** Meeting time of the last of them. */
  readonly at: number | undefined
  readonly isLast: boolean
}

function loadsOf(bench: Bench): readonly Load[] {
  const segments = runSegments(bench)
  return segments.flatMap((segment): readonly Load[] => {
    const endMs = cameToMs(bench, segment)
    const stops = [...bench.stopsIn(segment.id)].sort((a, b) => a.atMs - b.atMs)
    return [...stops, undefined].map((stop, place): Load => {
      const before = stops[place - 1]
      const isLast = !stop && segment === segments.at(-1)
      return {
        segment: segment.id,
        fromMs: before?.atMs ?? 0,
        toMs: stop?.atMs ?? endMs,
        stops: [before, stop].flatMap((one) => (one ? [one.id] : [])),
        at: (stop ?? before)?.at,
        isLast,
      }
    })
  })
}

type Energy = RuleValue<'energy'>

function inTime({ fullMs, leftAtEnd }: Energy, loads: readonly Load[], bench: Bench) {
  const limit = known(fullMs)
  if (limit === undefined) return []
  const cases = (of: readonly Load[], most: number): readonly Case[] =>
    of.map((load) => {
      const value = Math.max(0, load.toMs - load.fromMs)
      return {
        sense: 'atMost',
        unit: 'ms',
        limit: most,
        value,
        at: load.at,
        stops: load.stops,
        says: () =>
          `On one load the car runs ${durationInWords(value)} from ${beginningOf(load, bench)}, at most ${durationInWords(most)}.`,
      }
    })
  const called = 'Running on one load'
  return limitsOf({ limit, leftAtEnd, loads, cases, name: 'full', called })
}

function inLaps({ fullLaps, leftAtEnd }: Energy, loads: readonly Load[], bench: Bench) {
  const limit = known(fullLaps)
  if (limit === undefined) return []
  const cases = (of: readonly Load[], most: number): readonly Case[] =>
    of.flatMap((load): readonly Case[] => {
      const laps = lapsOf(load, bench)
      if (laps === undefined) return []
      return [
        {
          sense: 'atMost',
          unit: 'count',
          limit: most,
          value: laps,
          at: load.at,
          stops: load.stops,
          says: () =>
            `On one load the car runs about ${countInWords(laps, 'lap')} from ${beginningOf(load, bench)}, at most ${most}: an estimate from the paces entered.`,
        },
      ]
    })
  const called = 'Laps on one load (estimate)'
  return limitsOf({ limit, leftAtEnd, loads, cases, name: 'laps', called })
}

interface ToLimit {
  readonly name: string
  readonly called: string
  readonly limit: number
  readonly leftAtEnd: Energy['leftAtEnd']
  readonly loads: readonly Load[]
  readonly cases: (of: readonly Load[], most: number) => readonly Case[]
}

/** The last load must leave its share, rounded against us. */
function limitsOf({ name, called, limit, leftAtEnd, loads, cases }: ToLimit): readonly Limit[] {
  const left = known(leftAtEnd)
  const all = { name, called, cases: cases(loads, limit) }
  if (left === undefined) return [all]
  const most = shareDown(limit, 1_000 - left)
  const last = loads.filter(({ isLast }) => isLast)
  return [all, { name: `${name}AtEnd`, called: `${called}, the last`, cases: cases(last, most) }]
}

function beginningOf({ segment, fromMs }: Load, bench: Bench): string {
  return placeInWords(bench, { segment, clockMs: fromMs })
}

/** Each driver's laps rounded up; undefined where nobody, or somebody without a pace, drives a part of it. */
function lapsOf({ segment, fromMs, toMs }: Load, bench: Bench): number | undefined {
  const drivenMs = new Map<string, number>()
  for (const span of bench.spansIn(segment)) {
    const ms = Math.min(toMs, span.toMs) - Math.max(fromMs, span.fromMs)
    if (span.duty !== 'controller' || ms <= 0) continue
    drivenMs.set(span.person, (drivenMs.get(span.person) ?? 0) + ms)
  }
  let laps = 0
  let covered = 0
  for (const [person, ms] of drivenMs) {
    const paceMs = bench.drivers.find(({ id }) => id === person)?.member?.paceMs
    if (!paceMs) return undefined
    laps += Math.ceil(ms / paceMs)
    covered += ms
  }
  return covered >= toMs - fromMs ? laps : undefined
}
