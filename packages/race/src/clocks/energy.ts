/** What is left on the load. */
import { lengthOf, type Stretch } from '../checks/stretches.ts'
import { inForce } from '../fold/in-force.ts'
import type { Said, State } from '../fold/state.ts'
import { rulesOf, type RuleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { lapping, lapsNow } from '../time/lapping.ts'
import { paceNow } from './pace.ts'

export interface EnergyNow {
  /** `read`: as the venue showed it, and nothing was run since. */
  readonly basis: 'read' | 'estimated'
  /** Since when it is reckoned: the last reading or filling, or the first green. */
  readonly since: number
  readonly from: 'read' | 'filled' | 'start'
  /** The entry, where it was read or filled; the first run's where it is the start. */
  readonly entry: string
  /** Whole laps, rounded down; never below 0. Absent where only laps are known, no pace, and some were run. */
  readonly lapsLeft?: number
  /** Laps that were on the load at `since`, where how many of them are left cannot be told. */
  readonly lapsThen?: number
  /** Never below 0; absent where only laps are known and no pace. */
  readonly timeLeftMs?: number
  /** A full load. */
  readonly lengthMs?: number
  /** About when it is empty, at rate 1 from now; of an empty one, when it was. */
  readonly emptyAt?: number
  /** Whether the car uses it now. */
  readonly running: boolean
  readonly empty: boolean
  readonly atEmpty?: 'stands' | 'slows' | 'penalty'
  readonly clause?: string
}

interface Load {
  readonly laps?: number
  readonly ms?: number
}

/**
 * From the last reading or filling on, less the time the car lapped since. A filling that names no amount fills the
 * car; without either it is taken to have started full: common practice, no source. Laps become time, and time laps,
 * at the pace entered for who drives, or where that is missing at that of the full load. Undefined before the first
 * green without a reading, and where neither the rules nor a reading say how much there is.
 */
export function energyNow(state: State, now: number): EnergyNow | undefined {
  const rule = rulesOf(inForce(state, 'rules', now)?.rules ?? [], 'energy')[0]
  const full = fullOf(rule?.value)
  const last = state.car.energy.at(-1)
  const first = state.raceControl.runs[0]
  const since = last?.at ?? first?.greenAt
  const entry = last?.entry ?? first?.entry
  const load = last ? loadOf(last, full) : full
  if (since === undefined || entry === undefined || !isKnown(load)) return undefined
  const atEmpty = known(rule?.value.atEmpty)
  const ran = lapping(state, { fromAt: since, toAt: now })
  const ranMs = lengthOf(ran)
  const lapMs = paceNow(state, now) ?? lapOf(full)
  const left = leftOf(load, ranMs, lapMs)
  const { lapsLeft, lapsThen, timeLeftMs } = left
  const lengthMs = full.ms ?? (full.laps !== undefined && lapMs ? full.laps * lapMs : undefined)
  return {
    ...{ basis: last && ranMs === 0 ? 'read' : 'estimated', since, entry },
    from: last?.body.what ?? 'start',
    ...(lapsLeft === undefined ? {} : { lapsLeft }),
    ...(lapsThen === undefined ? {} : { lapsThen }),
    ...(lengthMs === undefined ? {} : { lengthMs }),
    ...emptyAtOf(left, { now, ran }),
    ...{ running: lapsNow(state), empty: timeLeftMs === 0 || lapsLeft === 0 },
    ...(atEmpty === undefined ? {} : { atEmpty }),
    ...(rule?.clause === undefined ? {} : { clause: rule.clause }),
  }
}

interface Ran {
  readonly now: number
  readonly ran: readonly Stretch[]
}

function emptyAtOf(
  { loadMs, timeLeftMs }: Left,
  { now, ran }: Ran,
): Pick<EnergyNow, 'emptyAt' | 'timeLeftMs'> {
  if (loadMs === undefined || timeLeftMs === undefined) return {}
  if (timeLeftMs > 0) return { timeLeftMs, emptyAt: now + timeLeftMs }
  let leftMs = loadMs
  for (const { fromAt, toAt } of ran) {
    if (toAt - fromAt >= leftMs) return { timeLeftMs, emptyAt: fromAt + leftMs }
    leftMs -= toAt - fromAt
  }
  return { timeLeftMs, emptyAt: now }
}

function fullOf(value: RuleValue<'energy'> | undefined): Load {
  const laps = known(value?.fullLaps)
  const ms = known(value?.fullMs)
  return { ...(laps === undefined ? {} : { laps }), ...(ms === undefined ? {} : { ms }) }
}

function loadOf({ body }: Said<'energy.1'>, full: Load): Load {
  const { lapsLeft: laps, timeLeftMs: ms } = body
  if (laps === undefined && ms === undefined) return body.what === 'filled' ? full : {}
  return { ...(laps === undefined ? {} : { laps }), ...(ms === undefined ? {} : { ms }) }
}

function isKnown({ laps, ms }: Load): boolean {
  return laps !== undefined || ms !== undefined
}

/** How long a lap takes where a full load is known both ways; whole milliseconds. */
function lapOf({ laps, ms }: Load): number | undefined {
  return laps && ms ? Math.floor(ms / laps) : undefined
}

interface Left extends Pick<EnergyNow, 'lapsLeft' | 'lapsThen' | 'timeLeftMs'> {
  /** The whole load in time. */
  readonly loadMs?: number
}

function leftOf({ laps, ms }: Load, ranMs: number, lapMs: number | undefined): Left {
  const loadMs = ms ?? (laps !== undefined && lapMs ? laps * lapMs : undefined)
  const lapsAsRead = laps === undefined ? {} : ranMs === 0 ? { lapsLeft: laps } : { lapsThen: laps }
  if (loadMs === undefined) return lapsAsRead
  const timeLeftMs = Math.max(0, loadMs - ranMs)
  if (!lapMs) return { loadMs, timeLeftMs, ...lapsAsRead }
  const leftMs = laps === undefined ? timeLeftMs : laps * lapMs - ranMs
  return { loadMs, timeLeftMs, lapsLeft: Math.max(0, Math.floor(leftMs / lapMs)) }
}
