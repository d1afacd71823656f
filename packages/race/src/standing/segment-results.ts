/** What was entered segment by segment: the last classification of each run whose laps count. */
import { inForce } from '../fold/in-force.ts'
import type { Body } from '../entry/kinds/index.ts'
import type { SegmentRun, State } from '../fold/state.ts'
import { countsOf, runAt, runBefore } from '../time/runs-that-count.ts'
import type { Distance } from './laps-and-sections.ts'

export type ClassifiedLine = Body<'classification.1'>['lines'][number]

export interface SegmentResult {
  /** The classification it is read off, and when that was entered. */
  readonly entry: string
  readonly at: number
  readonly segment: string
  /** Counted from 0; those the programme lacks come last. */
  readonly index: number
  readonly stage?: number
  /** Which running of it; absent where the log has no green for it. */
  readonly run?: SegmentRun
  readonly lines: readonly ClassifiedLine[]
}

/**
 * In the order of the programme, and of its runs where a segment was run again and both count. A classification
 * belongs to the run that went before it.
 */
export function segmentResults(state: State, now: number): readonly SegmentResult[] {
  const programme = inForce(state, 'rules', now)?.programme ?? []
  const segments = programme.filter((item) => item.kind === 'segment')
  const last = new Map<string, SegmentResult>()
  for (const { entry, at, body } of state.raceControl.classifications) {
    const { scope, segment, lines } = body
    if (scope !== 'segment' || segment === undefined || at > now) continue
    const run = runAt(state, segment, at)
    if (run && !countsOf(state, run).laps) continue
    const place = segments.findIndex(({ id }) => id === segment)
    const index = place < 0 ? segments.length : place
    const stage = segments[place]?.stage
    last.set(run?.entry ?? segment, {
      ...{ entry, at, segment, index, lines: withOurs(state, lines) },
      ...(stage === undefined ? {} : { stage }),
      ...(run ? { run } : {}),
    })
  }
  return [...last.values()].sort(
    (a, b) => a.index - b.index || (a.run?.greenAt ?? 0) - (b.run?.greenAt ?? 0),
  )
}

/** That of the run in which, or after which, race control said something; of a run that has none yet there is none. */
export function resultAbout(
  state: State,
  results: readonly SegmentResult[],
  at: number,
): SegmentResult | undefined {
  const run = runBefore(state, at)
  return run && results.find((one) => one.run?.entry === run.entry)
}

/** That which was entered since, so that what race control said is in it. */
export function resultHolding(
  state: State,
  results: readonly SegmentResult[],
  at: number,
): SegmentResult | undefined {
  const about = resultAbout(state, results, at)
  return about && at <= about.at ? about : undefined
}

/** A row that somebody pasted without saying which is ours is ours by the name we had elsewhere. */
export function withOurs(
  state: State,
  lines: readonly ClassifiedLine[],
): readonly ClassifiedLine[] {
  if (lines.some(({ ours }) => ours === true)) return lines
  const names = new Set(
    state.raceControl.classifications.flatMap(({ body }) =>
      body.lines.filter(({ ours }) => ours === true).map(({ entrant }) => nameOf(entrant)),
    ),
  )
  const found = lines.find(({ entrant }) => names.has(nameOf(entrant)))
  return found ? lines.map((line) => (line === found ? { ...line, ours: true } : line)) : lines
}

/** Who a line is about: us, or an entrant by name, capitals and spaces around it aside. */
export function entrantOf({ entrant, ours }: ClassifiedLine): string {
  return ours === true ? OURS : nameOf(entrant)
}

function nameOf(entrant: string): string {
  return entrant.trim().toLowerCase()
}

/** No entrant can be called so. */
export const OURS = ' ours'

export function distanceOf({ laps, section }: ClassifiedLine): Distance {
  return section === undefined ? { laps } : { laps, sections: section }
}
