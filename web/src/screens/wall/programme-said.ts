/** What race control does to the programme, as tiles: later, shorter, abandoned, run again. Minutes are typed first. */
import { phaseOf, type Body, type SegmentPlace, type State } from '@pitlamp/race'
import type { Tile } from '../../parts/shown.ts'
import type { ToRecord } from './to-record.ts'

const MINUTE_MS = 60_000
/** Minutes a programme slips by. Common practice, no source. */
const LATER_MIN = [5, 10, 20] as const
const MOST_MIN = 1_440

/** Of what comes after the segment that runs. None where nothing comes. */
export function laterTiles(state: State, now: number, amount?: number): readonly Tile[] {
  if (!phaseOf(state, now).next) return []
  const usual = LATER_MIN.map((min) => ({ id: String(min), word: `${min} min` }))
  if (!isMinutes(amount)) return usual
  const typed = { id: String(amount), word: `${amount} min` }
  const earlier = { id: `-${amount}`, word: `${amount} min earlier` }
  return usual.some(({ id }) => id === typed.id) ? [...usual, earlier] : [...usual, typed, earlier]
}

export function programmeLater(state: State, now: number, minutes: string): ToRecord | undefined {
  const fromItem = phaseOf(state, now).next?.item.id
  if (fromItem === undefined) return undefined
  const byMs = Number(minutes) * MINUTE_MS
  const word = byMs < 0 ? `${minutes.slice(1)} min earlier` : `${minutes} min later`
  return { kind: 'programmeMoved.1', body: { fromItem, byMs }, word }
}

/** One segment, and what may be said of it. */
export interface SegmentSaid {
  readonly segment: string
  /** `Segment 3, running` */
  readonly label: string
  readonly tiles: readonly Tile[]
}

/** The one that runs; between two the one that is over and the one that comes. */
export function segmentsSaid(state: State, now: number, amount?: number): readonly SegmentSaid[] {
  const { phase, segment, next } = phaseOf(state, now)
  const length = lengthTile(amount)
  if (segment && (phase === 'green' || phase === 'powerOff'))
    return [said(segment, 'running', [length, ABANDONED, ...AGAIN])]
  return [
    ...(segment ? [said(segment, 'over', AGAIN)] : []),
    ...(next ? [said(next, 'to come', [length, ABANDONED])] : []),
  ]
}

function said({ item, index }: SegmentPlace, stands: string, tiles: readonly Tile[]): SegmentSaid {
  const label = `${item.name ?? `Segment ${index + 1}`}, ${stands}`
  return { segment: item.id, label, tiles }
}

const ABANDONED: Tile = { id: 'abandoned', word: 'Abandoned' }

/** Laps, driving time: each may count or not, as it is ruled. */
const AGAIN: readonly Tile[] = [
  { id: 'runAgain no no', word: 'Run again', hint: 'nothing counts' },
  { id: 'runAgain yes yes', word: 'Run again', hint: 'laps and driving count' },
  { id: 'runAgain yes no', word: 'Run again', hint: 'only laps count' },
  { id: 'runAgain no yes', word: 'Run again', hint: 'only driving counts' },
]

function lengthTile(amount: number | undefined): Tile {
  return isMinutes(amount)
    ? { id: `length ${amount}`, word: `${amount} min long` }
    : { id: 'length', word: 'Another length', hint: 'how many minutes?', off: true }
}

function isMinutes(amount: number | undefined): amount is number {
  return amount !== undefined && amount > 0 && amount <= MOST_MIN
}

export function segmentChanged(segment: string, tile: string): ToRecord {
  const [what = '', one = '', two = ''] = tile.split(' ')
  return {
    kind: 'segmentChanged.1',
    body: { segment, change: changeOf(what, one, two) },
    word: what === 'length' ? `${one} min long` : what === 'abandoned' ? 'Abandoned' : 'Run again',
  }
}

function changeOf(what: string, one: string, two: string): Body<'segmentChanged.1'>['change'] {
  if (what === 'length') return { what, lengthMs: Number(one) * MINUTE_MS }
  if (what === 'abandoned') return { what }
  return { what: 'runAgain', lapsCount: one === 'yes', drivingCounts: two === 'yes' }
}
