/** What the top of every race screen says: clock and power, how the clock was set, whether it runs. */
import {
  phaseOf,
  policyFor,
  inForce,
  segmentClock,
  segmentsOf,
  type Phase,
  type SegmentClock,
  type SegmentPlace,
  type State,
} from '@pitlamp/race'
import { about, countdown } from './time.ts'
import { steady } from './steady.ts'

export interface RaceHead {
  readonly shape: 'green' | 'powerOff' | 'red' | 'wait' | 'chequered'
  /** `Green`, `Power off`, `Break` */
  readonly power: string
  /** `Segment 2 of 3` */
  readonly segment: string
  /** What the figure counts, and how the clock was set. */
  readonly label: string
  readonly figure?: string
  readonly held: boolean
}

export function raceHead(state: State, now: number): RaceHead {
  const phase = phaseOf(state, now)
  const clock = segmentClock(state, now)
  if (clock) return running({ state, phase, now }, clock)
  const power = powerOf(phase)
  if (phase.phase === 'finished') {
    return { ...power, segment: 'The race is over', label: 'The race is over', held: false }
  }
  return { ...power, ...waiting(state, phase, now), held: false }
}

interface Moment {
  readonly state: State
  readonly phase: Phase
  readonly now: number
}

function running({ state, phase, now }: Moment, clock: SegmentClock): RaceHead {
  const segment = segmentWords(clock.segment)
  const counted = clock.toGoMs ?? clock.elapsedMs
  const label = [
    `${segment}, ${clock.toGoMs === undefined ? 'gone' : 'to go'}`,
    readWords(clock, now),
    ...(clock.running ? [] : assumedWords(state, phase, now)),
  ]
  return {
    ...powerOf(phase),
    segment,
    label: label.join(' · '),
    figure: steady(countdown(counted), countdown(clock.lengthMs ?? counted)),
    held: !clock.running,
  }
}

function powerOf({ phase, cause, between }: Phase): Pick<RaceHead, 'shape' | 'power'> {
  switch (phase) {
    case 'green':
      return { shape: 'green', power: 'Green' }
    case 'powerOff':
      return cause === 'redFlag'
        ? { shape: 'red', power: 'Red flag' }
        : { shape: 'powerOff', power: 'Power off' }
    case 'between':
      return { shape: 'wait', power: between === 'laneChange' ? 'Lane change' : 'Break' }
    case 'finished':
      return { shape: 'chequered', power: 'Finished' }
    case 'beforeStart':
      return { shape: 'wait', power: 'Before the start' }
  }
}

function segmentWords({ index, of }: SegmentPlace): string {
  return `Segment ${index + 1} of ${of}`
}

function readWords({ readAt, boundMs }: SegmentClock, now: number): string {
  const read =
    readAt === undefined ? 'hall’s clock not read yet' : `hall’s clock ${about(now - readAt)} ago`
  return boundMs < 1_000 ? read : `${read}, ±${Math.ceil(boundMs / 1_000)} s`
}

/** The figure itself says that it stands; whether that is known is said here. */
function assumedWords(state: State, phase: Phase, now: number): readonly string[] {
  const policy = policyFor(inForce(state, 'rules', now), 'segment', phase.cause ?? 'trackCall')
  return policy.assumed ? ['taken to stand: the rule is not known'] : []
}

function waiting(state: State, { next }: Phase, now: number) {
  if (next === undefined) return { segment: '', label: 'No segment in the programme yet' }
  const segment = segmentWords(next)
  const startsAt = segmentsOf(state, now)[next.index]?.startsAt
  if (startsAt === undefined || startsAt <= now)
    return { segment, label: `${segment}, waiting for green` }
  return { segment, label: `${segment}, starts in about`, figure: countdown(startsAt - now) }
}
