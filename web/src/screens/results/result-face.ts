/** The result in words: places, distances, points, gaps where they mean something, ties and what they wait for. */
import {
  counted,
  countInWords,
  comparableAt,
  inForce,
  resultOf,
  type Comparable,
  type Distance,
  type NotCounted,
  type Result,
  type ResultLine,
  type SegmentResult,
  type State,
  type Tie,
  type WhyNotCounted,
} from '@pitlamp/race'
import { lapsWords, penaltyWords } from '../../parts/penalty-words.ts'
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
  /** Penalties that change nothing in the result of all segments, and why. */
  readonly notCounted: readonly string[]
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
    notCounted: (all?.notCounted ?? []).map(notCountedWords),
    segments: (all?.segments ?? []).map((one) => segmentShown(one, state, now)),
  }
}

function titleOf({ segments }: Result): string {
  return `After ${countInWords(segments.length, 'segment')}`
}

function roundsTitle({ over }: Comparable): string {
  return `${over === 1 ? 'Over the first segment' : `Over the first ${counted(over, 'segment')}`}, where every team had every lane`
}

function caveatOf({ is, round }: Comparable): string | undefined {
  if (is === 'tooEarly')
    return `Too early to compare: every team has had every lane after ${countInWords(round, 'segment')}.`
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
  const says =
    gaps &&
    by === 'distance' &&
    (behind.laps > 0 || (behind.laps === 0 && (behind.sections ?? 0) > 0))
  return {
    ...{ id: entrant, place: ordinal(place), entrant, ours, value },
    ...(says ? { behind: behindWords(behind) } : {}),
    notes: [
      ...(by === 'points' ? [distanceWords(distance)] : []),
      ...(line.brokenBy === undefined ? [] : [`by ${TIE_WORD[line.brokenBy]}`]),
      ...(line.placesLost === undefined
        ? []
        : [`${counted(line.placesLost, 'place')} down by penalty`]),
      ...(line.classified ? [] : ['not classified']),
      ...(line.segments < most ? [`in ${line.segments} of ${counted(most, 'segment')}`] : []),
    ],
  }
}

const NOT_COUNTED = {
  notServed: 'it is not served yet, and has cost no lap.',
  placesNotKnown: 'how many places is not known, so none are taken.',
  inItsClassification: 'it counts once that segment’s classification is entered again.',
  nothingToLose: 'without it we are as far down.',
} as const satisfies Record<WhyNotCounted, string>

function notCountedWords({ penalty, why }: NotCounted): string {
  return `Not counted: ${penaltyWords(penalty.body)}; ${NOT_COUNTED[why]}`
}

function behindWords({ laps, sections }: Distance): string {
  if (laps === 0 && sections !== undefined) return `${counted(sections, 'section')} behind`
  return `${lapsWords(laps)}${sections ? ` ${counted(sections, 'section')}` : ''} behind`
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
  /** Of its run: the same however often its classification is entered again. */
  readonly id: string
  readonly title: string
  /** What stands in a small square for it: its number, or its name where it has one. */
  readonly mark: string
  /** `2nd of 8, 51.20` */
  readonly words: string
  /** Ours; absent where we have no line. */
  readonly place?: string
  readonly value?: string
  /** First to last. */
  readonly lines: readonly SegmentLineShown[]
}

interface SegmentLineShown {
  readonly id: string
  readonly place: string
  readonly entrant: string
  readonly value: string
  readonly ours: boolean
}

function segmentShown(
  { run, segment, index, lines }: SegmentResult,
  state: State,
  now: number,
): SegmentShown {
  const item = inForce(state, 'rules', now)?.programme.find(({ id }) => id === segment)
  const inOrder = [...lines].sort((a, b) => a.place - b.place)
  const shown = inOrder.map((line) => ({
    ...{ id: `${line.place} ${line.entrant}`, place: ordinal(line.place), entrant: line.entrant },
    ...{ value: lineWords(line), ours: line.ours === true },
  }))
  const own = shown.find(({ ours }) => ours)
  return {
    id: run?.entry ?? segment,
    title: item?.name ?? `Segment ${index + 1}`,
    mark: item?.name ?? String(index + 1),
    words: own ? `${own.place} of ${lines.length}, ${own.value}` : 'without us',
    ...(own ? { place: own.place, value: own.value } : {}),
    lines: shown,
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
