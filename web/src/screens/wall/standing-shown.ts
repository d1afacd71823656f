/** Where we stand, in words. */
import { counted, standing, summedStanding, type Distance, type Standing } from '@pitlamp/race'
import { lapsWords } from '../../parts/penalty-words.ts'
import { clockTime, figure } from '../../parts/time.ts'
import type { Seen } from './people.ts'

export interface StandingShown {
  /** `3rd, 892` */
  readonly place: string
  /** `2 laps behind 2nd, 6 laps ahead of 4th` */
  readonly gaps: string
  /** `as at 47:00 gone` */
  readonly asAt: string
}

/** Of a race made of segments the sum of them; else as it was read last. */
export function standingShown({ state, now, crew }: Seen): StandingShown | undefined {
  const last = standing(state, now)
  if (!last) return undefined
  const { ours, asAtClockMs, at, comparable } = last
  const asAt =
    asAtClockMs === undefined
      ? `as at ${clockTime(at, crew.timeZone)}`
      : `as at ${figure(asAtClockMs)} gone`
  const sum = summedStanding(state, now)
  const { place, distance, points } = sum?.ours ?? { place: last.place, distance: ours }
  const far = points === undefined ? distanceWords(distance) : pointsWords(points)
  const around = sum?.by === 'points' ? {} : (sum ?? last)
  return { place: `${ordinal(place)}, ${far}`, gaps: gapsOf(comparable, around), asAt }
}

interface Neighbour {
  readonly place: number
  readonly gap: Distance
}

/** On fixed lanes a gap says nothing before every team has had every lane. */
function gapsOf(
  { is, over }: Standing['comparable'],
  { ahead, behind }: { readonly ahead?: Neighbour; readonly behind?: Neighbour },
): string {
  if (is === 'tooEarly') return 'too early to compare'
  if (is === 'overSegments') return `gaps compare over ${counted(over, 'segment')} only`
  return [
    ...(ahead ? [gapWords(ahead.gap, 'behind', ordinal(ahead.place))] : []),
    ...(behind ? [gapWords(behind.gap, 'ahead of', ordinal(behind.place))] : []),
  ].join(', ')
}

const TURNED = { behind: 'ahead of', 'ahead of': 'behind' } as const

/** Where a penalty turned the order round the gap says so the other way. */
function gapWords(gap: Distance, way: keyof typeof TURNED, whom: string): string {
  const laps = wholeLaps(gap)
  if (laps === 0) return `on the lap of ${whom}`
  return laps > 0
    ? `${lapsWords(laps)} ${way} ${whom}`
    : `${lapsWords(-laps)} ${TURNED[way]} ${whom}`
}

/** A gap counts its sections forwards also below 0: −1.45 is less than a lap the other way. */
function wholeLaps({ laps, sections = 0 }: Distance): number {
  return laps < 0 && sections > 0 ? laps + 1 : laps
}

/** `892`, or with its track section as venues write it: `892.05`. */
export function distanceWords({ laps, sections }: Distance): string {
  return sections === undefined ? String(laps) : `${laps}.${String(sections).padStart(2, '0')}`
}

export function ordinal(place: number): string {
  const tens = place % 100
  if (tens >= 11 && tens <= 13) return `${place}th`
  return `${place}${{ 1: 'st', 2: 'nd', 3: 'rd' }[place % 10] ?? 'th'}`
}

export function pointsWords(points: number): string {
  return counted(points, 'point')
}
