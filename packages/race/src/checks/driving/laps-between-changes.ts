import { known } from '../../rules/shape.ts'
import type { Bench, Turn } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { countInWords, durationInWords } from '../in-words.ts'
import { placeInWords } from '../places.ts'
import { cutOut, lengthOf, type Stretch } from '../stretches.ts'
import { beginningOf, changesOf, isChange } from './relay.ts'

/**
 * From one change of the controller to the next; before the first and after the last nothing is owed. Nobody counts
 * laps by driver, so they are an estimate: what the driver runs without stops ÷ the pace entered, what is left of a
 * lap dropped. A driver without a pace is not judged. Decided by the change that ends it.
 */
export const lapsBetweenChanges: Check<'lapsBetweenChanges'> = {
  axis: 'meeting',
  limits: ({ atLeast }, bench) => {
    const limit = known(atLeast)
    if (limit === undefined) return []
    const stands = standsOf(bench)
    const cases = runsBetweenChanges(bench).flatMap((run): readonly Case[] => {
      const paceMs = run.first.driver.member?.paceMs
      if (!paceMs) return []
      return [caseOf(bench, run, { limit, paceMs, runMs: runningMs(run.turns, stands) })]
    })
    return [{ name: 'atLeast', called: 'Laps between two changes (estimate), at least', cases }]
  },
}

interface Run {
  readonly first: Turn
  /** More than one where the same driver goes on after a break. */
  readonly turns: readonly Turn[]
  readonly endedBy: Turn
}

function runsBetweenChanges(bench: Bench): readonly Run[] {
  const runs: Run[] = []
  let since: { readonly first: Turn; readonly turns: Turn[] } | undefined
  for (const change of changesOf(bench)) {
    if (!isChange(change)) {
      since?.turns.push(change.to)
      continue
    }
    if (since) runs.push({ first: since.first, turns: since.turns, endedBy: change.to })
    since = { first: change.to, turns: [change.to] }
  }
  return runs
}

interface Owed {
  readonly limit: number
  readonly paceMs: number
  readonly runMs: number
}

function caseOf(bench: Bench, { first, turns, endedBy }: Run, owed: Owed): Case {
  const { limit, paceMs, runMs } = owed
  const { id, name } = first.driver
  const laps = Math.floor(runMs / paceMs)
  return {
    sense: 'atLeast',
    unit: 'count',
    limit,
    value: laps,
    at: endedBy.stint.fromAt,
    people: [id],
    spans: turns.flatMap(({ stint }) => stint.spanIds),
    says: () =>
      `Between two changes ${name} runs ${durationInWords(runMs)} from ${placeInWords(bench, beginningOf(first.stint))}, ${laps === 0 ? 'less than one lap' : `about ${countInWords(laps, 'lap')}`}; at least ${countInWords(limit, 'lap')}, about ${durationInWords(limit * paceMs)}: an estimate from the pace entered.`,
  }
}

/** Spans of one segment name its stops more than once, which cuts nothing more out. */
function runningMs(turns: readonly Turn[], stands: Stands): number {
  let runMs = 0
  for (const { stint } of turns) {
    const holes = stint.spans.flatMap(({ segment }) => stands.get(segment) ?? [])
    for (const piece of stint.driven) runMs += lengthOf(cutOut(piece, holes))
  }
  return runMs
}

/** When the car stands in stops, by segment. */
type Stands = ReadonlyMap<string, readonly Stretch[]>

function standsOf({ timeline, stopsIn, stopMinimumMs }: Bench): Stands {
  return new Map(
    timeline.segments.map(({ id }) => [
      id,
      stopsIn(id).map(({ at, outAt }) => ({ fromAt: at, toAt: outAt ?? at + stopMinimumMs })),
    ]),
  )
}
