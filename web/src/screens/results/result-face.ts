/** The result in words: places, distances, points, gaps where they mean something, ties and what they wait for. */
import {
  comparableAt,
  inForce,
  resultOf,
  type Comparable,
  type Distance,
  type Result,
  type ResultLine,
  type SegmentResult,
  type State,
  type Tie,
} from '@pitlamp/race'
import { lapsWords } from '../../parts/penalty-words.ts'
import { distanceWords, ordinal, pointsWords } from '../wall/standing-shown.ts'

export interface LineShown {
  readonly id: string
  readonly place: string
  readonly entrant: string
  readonly ours: boolean
  /** `412.35`, or points where they decide. */
  readonly value: string
  /** `2 laps behind`; absent for the first, and where gaps say nothing. */
  readonly behind?: string
  /** `by count-back`, `not classified`, `in 3 of 4 segments` */
  readonly notes: readonly string[]
}

export interface ResultShown {
  readonly title: string
  readonly lines: readonly LineShown[]
  readonly ties: readonly string[]
}

export interface ResultsShown {
  /** Said above: why there are no gaps, or over what they are. */
  readonly caveat?: string
  /** After all segments so far. */
  readonly all?: ResultShown
  /** Over whole rounds of the lanes only, where that is where teams compare. */
  readonly compared?: ResultShown
  readonly pointsNotKnown: boolean
  readonly segments: readonly SegmentShown[]
}

export function resultsShown(state: State, now: number): ResultsShown {
  const comparable = comparableAt(state, now)
  const all = resultOf(state, now)
  const over =
    comparable.is === 'overSegments' ? resultOf(state, now, { before: comparable.over }) : undefined
  const caveat = caveatOf(comparable)
  return {
    ...(caveat === undefined ? {} : { caveat }),
    ...(all ? { all: shown(all, { title: titleOf(all), gaps: comparable.is === 'yes' }) } : {}),
    ...(over ? { compared: shown(over, { title: roundsTitle(comparable), gaps: true }) } : {}),
    pointsNotKnown: all?.pointsNotKnown ?? false,
    segments: (all?.segments ?? []).map((one) => segmentShown(one, state, now)),
  }
}

function titleOf({ segments }: Result): string {
  return segments.length === 1 ? 'After one segment' : `After ${segments.length} segments`
}

function roundsTitle({ over }: Comparable): string {
  return `Over the first ${over} segments, where every team had every lane`
}

function caveatOf({ is, round }: Comparable): string | undefined {
  if (is === 'tooEarly')
    return `Too early to compare: every team has had every lane after ${round} segments.`
  if (is === 'overSegments')
    return 'Teams have had other lanes since: gaps are said over whole rounds only.'
  return undefined
}

interface Saying {
  readonly title: string
  readonly gaps: boolean
}

function shown(result: Result, { title, gaps }: Saying): ResultShown {
  const most = Math.max(...result.lines.map(({ segments }) => segments))
  return {
    title,
    lines: result.lines.map((line) => lineShown(line, result, { gaps, most })),
    ties: result.ties.map(tieWords),
  }
}

function lineShown(
  line: ResultLine,
  { by }: Result,
  { gaps, most }: { readonly gaps: boolean; readonly most: number },
): LineShown {
  const { place, entrant, ours, distance, behind, points } = line
  const value = by === 'points' ? pointsWords(points ?? 0) : distanceWords(distance)
  const says = gaps && by === 'distance' && (behind.laps > 0 || (behind.sections ?? 0) > 0)
  return {
    ...{ id: entrant, place: ordinal(place), entrant, ours, value },
    ...(says ? { behind: behindWords(behind) } : {}),
    notes: [
      ...(by === 'points' ? [distanceWords(distance)] : []),
      ...(line.brokenBy === undefined ? [] : [`by ${TIE_WORD[line.brokenBy]}`]),
      ...(line.classified ? [] : ['not classified']),
      ...(line.segments < most ? [`in ${line.segments} of ${most} segments`] : []),
    ],
  }
}

function behindWords({ laps, sections }: Distance): string {
  if (laps === 0 && sections !== undefined)
    return `${sections} ${sections === 1 ? 'section' : 'sections'} behind`
  return `${lapsWords(laps)}${sections ? ` ${sections} sections` : ''} behind`
}

const TIE_WORD = {
  runOff: 'a run-off',
  bestLap: 'the best lap',
  bestSegment: 'the best segment',
  countBack: 'count-back',
  scrutineeringOrder: 'the order of scrutineering',
} as const satisfies Record<NonNullable<Tie['waitsFor']>, string>

function tieWords({ entrants, waitsFor }: Tie): string {
  const who = listed(entrants)
  return waitsFor === undefined
    ? `${who} are equal, and the rules name nothing more.`
    : `${who} are equal: that waits for ${TIE_WORD[waitsFor]}.`
}

function listed(names: readonly string[]): string {
  const first = names.slice(0, -1).join(', ')
  const all = first === '' ? (names.at(-1) ?? '') : `${first} and ${names.at(-1) ?? ''}`
  return all.charAt(0).toUpperCase() + all.slice(1)
}

export interface SegmentShown {
  readonly id: string
  readonly title: string
  /** `2nd of 8, 51.20` */
  readonly words: string
  /** First to last. */
  readonly lines: readonly { readonly id: string; readonly words: string; readonly ours: boolean }[]
}

function segmentShown(
  { entry, segment, index, lines }: SegmentResult,
  state: State,
  now: number,
): SegmentShown {
  const item = inForce(state, 'rules', now)?.programme.find(({ id }) => id === segment)
  const ours = lines.find((line) => line.ours)
  const own = ours ? `${ordinal(ours.place)} of ${lines.length}, ${lineWords(ours)}` : 'without us'
  return {
    id: entry,
    title: item?.name ?? `Segment ${index + 1}`,
    words: own,
    lines: lines.map((line) => ({
      id: `${line.place} ${line.entrant}`,
      words: `${ordinal(line.place)} ${line.entrant}, ${lineWords(line)}`,
      ours: line.ours === true,
    })),
  }
}

function lineWords({
  laps,
  section,
}: {
  readonly laps: number
  readonly section?: number
}): string {
  return distanceWords(section === undefined ? { laps } : { laps, sections: section })
}
