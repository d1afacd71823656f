/** Where we stand: the last classification, and what was taken or given since. */
import { inForce } from '../fold/in-force.ts'
import type { Body } from '../entry/kinds/index.ts'
import type { Said, State } from '../fold/state.ts'
import { ruleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { comparableAt, type Comparable } from './comparable.ts'
import { addDistance, gapBetween, type Distance } from './laps-and-sections.ts'

type Classification = Said<'classification.1'>
type Line = Classification['body']['lines'][number]

export interface Standing {
  /** The classification it is read off. */
  readonly entry: string
  readonly standing: Classification['body']['standing']
  readonly scope: Classification['body']['scope']
  readonly segment?: string
  /** When it was entered, and the race clock the venue's screen showed it for. */
  readonly at: number
  readonly asAtClockMs?: number
  readonly place: number
  /** How many there are; absent where not everybody from the first place on was entered. */
  readonly of?: number
  readonly shown: Distance
  /** With penalties in laps and corrections since. */
  readonly ours: Distance
  readonly since: Since
  readonly sectionsPerLap?: number
  /** Whether the gaps mean anything: on fixed lanes not before every team has had every lane. */
  readonly comparable: Comparable
  /** Those around us as they were shown. */
  readonly ahead?: Rival
  readonly behind?: Rival
}

export interface Since {
  /** Laps taken; below 0 where a penalty from before was withdrawn. */
  readonly penaltyLaps: number
  readonly correctedLaps: number
  readonly correctedSections: number
}

export interface Rival {
  readonly place: number
  readonly entrant: string
  readonly theirs: Distance
  /** What the one ahead has more than we have now, or we more than the one behind; below 0 where that turned round. */
  readonly gap: Distance
}

/** The last classification entered that has our line, up to `now`; undefined where there is none. */
export function standing(state: State, now: number): Standing | undefined {
  const last = state.raceControl.classifications
    .filter(({ at, body }) => at <= now && body.lines.some((line) => line.ours))
    .at(-1)
  const line = last?.body.lines.find(({ ours }) => ours)
  if (!last || !line) return undefined
  const rule = ruleValue(inForce(state, 'rules', now)?.rules ?? [], 'tracks')
  const sectionsPerLap = known(rule?.sections)
  const since = sinceOf(state, last.at, now)
  const ours = withSince(distanceOf(line), since, sectionsPerLap)
  const { standing, scope, segment, asAtClockMs, lines } = last.body
  return {
    ...{ entry: last.entry, standing, scope, at: last.at, place: line.place },
    ...(isComplete(lines) ? { of: lines.length } : {}),
    ...{ shown: distanceOf(line), ours, since, comparable: comparableAt(state, last.at) },
    ...(segment === undefined ? {} : { segment }),
    ...(asAtClockMs === undefined ? {} : { asAtClockMs }),
    ...(sectionsPerLap === undefined ? {} : { sectionsPerLap }),
    ...rivals(lines, { line, ours, sectionsPerLap }),
  }
}

/** Everybody from the first place on; our own line alone does not say so. */
function isComplete(lines: readonly Line[]): boolean {
  return lines.length > 1 && Math.max(...lines.map(({ place }) => place)) <= lines.length
}

interface Us {
  readonly line: Line
  readonly ours: Distance
  readonly sectionsPerLap: number | undefined
}

/** Our neighbours by place; of those who share a place, by their order in the classification. */
function rivals(
  lines: readonly Line[],
  { line, ours, sectionsPerLap }: Us,
): Pick<Standing, 'ahead' | 'behind'> {
  const inOrder = [...lines].sort((a, b) => a.place - b.place)
  const us = inOrder.indexOf(line)
  const [before, after] = [inOrder[us - 1], inOrder[us + 1]]
  const rival = (one: Line, gap: Distance): Rival => {
    return { place: one.place, entrant: one.entrant, theirs: distanceOf(one), gap }
  }
  const gap = (a: Distance, b: Distance) => gapBetween(a, b, sectionsPerLap)
  return {
    ...(before ? { ahead: rival(before, gap(distanceOf(before), ours)) } : {}),
    ...(after ? { behind: rival(after, gap(ours, distanceOf(after))) } : {}),
  }
}

function sinceOf({ raceControl }: State, from: number, now: number): Since {
  const isSince = (at: number | undefined) => at !== undefined && at > from && at <= now
  let penaltyLaps = 0
  for (const { at, body, withdrawnAt } of raceControl.penalties) {
    if (isSince(at)) penaltyLaps += lapsOf(body)
    if (isSince(withdrawnAt)) penaltyLaps -= lapsOf(body)
  }
  const corrections = raceControl.lapsCorrections.filter(({ at }) => isSince(at))
  return {
    penaltyLaps,
    correctedLaps: corrections.reduce((sum, { body }) => sum + body.laps, 0),
    correctedSections: corrections.reduce((sum, { body }) => sum + (body.sections ?? 0), 0),
  }
}

function lapsOf({ what, laps }: Body<'penalty.1'>): number {
  return what === 'laps' ? (laps ?? 0) : 0
}

function withSince(shown: Distance, since: Since, sectionsPerLap: number | undefined): Distance {
  const { penaltyLaps, correctedLaps, correctedSections } = since
  const change = { laps: correctedLaps - penaltyLaps, sections: correctedSections }
  return addDistance(shown, change, sectionsPerLap)
}

function distanceOf({ laps, section }: Line): Distance {
  return section === undefined ? { laps } : { laps, sections: section }
}
