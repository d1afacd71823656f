/** How the rotation's parts are said. */
import type { Duty, Finding, Regulations, TimelineSegment } from '@pitlamp/race'
import { laneWords } from '../../parts/lane-words.ts'
import { sentenceCase } from '../../parts/moves.ts'
import { clockTime, hoursMinutes } from '../../parts/time.ts'
import { segmentName } from '../../planning/segments.ts'

export const DUTY_WORDS = [
  ['controller', 'drives'],
  ['post', 'marshals'],
  ['wall', 'is on the wall'],
  ['bench', 'is at the bench'],
  ['offDuty', 'is off duty'],
] as const satisfies readonly (readonly [Duty, string])[]

export function dutyWords(duty: Duty): string {
  return DUTY_WORDS.find(([one]) => one === duty)?.[1] ?? duty
}

/** `Segment 3`; on fixed lanes the lane first, since a narrow strip cuts what follows: `Lane 5, segment 3`. */
export function headWords(rules: Regulations, { id, lane, track }: TimelineSegment): string {
  const name = segmentName(rules, id)
  if (lane === undefined) return name
  const words = laneWords(typeof lane === 'number' ? { lane, track } : lane)
  return `${sentenceCase(words)}, ${name.charAt(0).toLowerCase()}${name.slice(1)}`
}

/** A figure of a finding in its unit: `1:15`, `60 %`, `11`. */
export function figureOf(value: number, unit: Finding['unit']): string {
  if (unit === 'ms') return `${value < 0 ? '−' : ''}${hoursMinutes(Math.abs(value))}`
  if (unit === 'perMille') return `${Math.round(value) / 10} %`
  return value < 0 ? `−${-value}` : String(value)
}

/** The time at the venue, or where the organiser named none how long after the first green. */
export function timeWords(
  at: number,
  from: { readonly startAt: number; readonly timeZone: string; readonly hasClock: boolean },
): string {
  if (!from.hasClock) return hoursMinutes(at - from.startAt)
  return clockTime(at, from.timeZone, { dayRelativeTo: from.startAt })
}
