import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { clockAt } from '../time/clock-map.ts'
import { positionAt } from '../time/plan-spans.ts'
import { segmentsOf, type SegmentOutlook } from '../time/programme.ts'
import { owedStops, visitsOf, windowsOf, type Visit, type Window } from './visits.ts'

export interface StopWindow {
  /** The rule's line. */
  readonly id: string
  readonly segment: string
  readonly fromMs: number
  readonly toMs: number
  /** The visit that serves it. */
  readonly served?: string
  /** Meeting time, about while it is ahead; absent where the programme lacks the segment. */
  readonly opensAt?: number
  readonly closesAt?: number
  readonly state: 'ahead' | 'open' | 'served' | 'missed'
}

export interface StopsDone {
  /** Within the running or last segment where stops are demanded per segment, otherwise in the race. */
  readonly done: number
  readonly demanded?: number
  readonly windows: readonly StopWindow[]
}

/** Mandatory stops so far. Where the rules name windows, only a stop that serves one counts. */
export function stopsDone(state: State, now: number): StopsDone {
  const regulations = inForce(state, 'rules', now)
  const visits = visitsOf(state, now)
  const owed = owedStops(regulations)
  const outlooks = segmentsOf(state, now)
  const segment = state.raceControl.runs.at(-1)?.segment ?? outlooks[0]?.item.id
  const perSegment = owed?.per === 'segment'
  const rules = windowsOf(regulations)
  const inScope = (of: string | undefined) => !perSegment || of === segment
  const done = visits.filter(
    (visit) =>
      visit.mandatory && inScope(visit.stop.segment) && (rules.length === 0 || visit.serves),
  ).length
  const named = rules.filter((window) => inScope(window.segment)).length
  const demanded = owed?.count ?? (named > 0 ? named : undefined)
  return {
    done,
    ...(demanded === undefined ? {} : { demanded }),
    windows: rules.map((window) => windowNow({ window, visits, outlooks, now })),
  }
}

interface Asked {
  readonly window: Window
  readonly visits: readonly Visit[]
  readonly outlooks: readonly SegmentOutlook[]
  readonly now: number
}

function windowNow({ window, visits, outlooks, now }: Asked): StopWindow {
  const served = visits.find((visit) => visit.serves?.id === window.id)?.stop.entry
  const outlook = outlooks.find((one) => one.item.id === window.segment)
  const line = { ...window, ...(served === undefined ? {} : { served }) }
  if (!outlook) return { ...line, state: served === undefined ? 'ahead' : 'served' }
  return {
    ...line,
    opensAt: positionAt(outlook, window.fromMs, now),
    closesAt: positionAt(outlook, window.toMs, now),
    state: served === undefined ? standing(window, outlook, now) : 'served',
  }
}

function standing(window: Window, outlook: SegmentOutlook, now: number): StopWindow['state'] {
  if (outlook.state === 'ahead') return 'ahead'
  if (outlook.state !== 'running' || !outlook.run) return 'missed'
  const { clockMs } = clockAt(outlook.run, now)
  if (clockMs < window.fromMs) return 'ahead'
  return clockMs <= window.toMs ? 'open' : 'missed'
}
