/** What the car owes by its own clocks: compulsory repairs, energy, penalties to be served. */
import { compulsoryRepairs } from '../clocks/compulsory-repairs.ts'
import { energyNow } from '../clocks/energy.ts'
import { driverNow } from '../clocks/stint-clock.ts'
import type { State } from '../fold/state.ts'
import { penalties, type PenaltyNow } from '../standing/penalties.ts'
import { segmentsOf } from '../time/programme.ts'
import type { Obligation } from './obligation.ts'

export function carDue(state: State, now: number): readonly Obligation[] {
  const driver = driverNow(state)
  const asked = { state, now, concerns: driver ? [driver.person] : [] }
  return [...repairs(asked), ...energy(asked), ...toServe(asked)]
}

interface Asked {
  readonly state: State
  readonly now: number
  readonly concerns: readonly string[]
}

function repairs({ state, now, concerns }: Asked): readonly Obligation[] {
  return compulsoryRepairs(state, now).flatMap(({ fault, limit }): readonly Obligation[] => {
    if (limit?.dueAt === undefined) return []
    const { dueAt, lengthMs, running, over, estimated } = limit
    return [
      {
        id: `repairLimit:${fault.entry}`,
        kind: 'repairLimit',
        dueAt,
        held: !running && !over,
        ...(lengthMs ? { lengthMs } : {}),
        ...(estimated ? { estimated } : {}),
        concerns,
        label: `${fault.fault} must be mended`,
      },
    ]
  })
}

/** Nothing where the load outlasts the race, nor of an empty one while the car does not run: it runs out no further. */
function energy({ state, now, concerns }: Asked): readonly Obligation[] {
  const load = energyNow(state, now)
  const last = segmentsOf(state, now)
    .filter((one) => one.state !== 'abandoned')
    .at(-1)
  if (load?.emptyAt === undefined || last === undefined || last.state === 'over') return []
  if (last.endsAt !== undefined && load.emptyAt > last.endsAt) return []
  if (load.empty && !load.running) return []
  return [
    {
      id: `energyEmpty:${load.entry}`,
      kind: 'energyEmpty',
      dueAt: load.emptyAt,
      held: !load.running,
      ...(load.lengthMs ? { lengthMs: load.lengthMs } : {}),
      ...(load.basis === 'estimated' ? { estimated: true } : {}),
      concerns,
      label: 'Energy runs out',
    },
  ]
}

/** Where nobody says within how many laps, or how long they take, it is due when it was given. */
function toServe({ state, now, concerns }: Asked): readonly Obligation[] {
  return penalties(state, now).flatMap(({ penalty, serve }): readonly Obligation[] => {
    if (!serve) return []
    const { dueAt = penalty.at, lengthMs, remainingMs, running } = serve
    return [
      {
        id: `servePenalty:${penalty.entry}`,
        kind: 'servePenalty',
        dueAt,
        held: remainingMs !== undefined && remainingMs > 0 && !running,
        ...(lengthMs ? { lengthMs } : {}),
        ...(lengthMs === undefined ? {} : { estimated: true }),
        concerns,
        label: SERVED[penalty.body.what] ?? 'Penalty to be served',
      },
    ]
  })
}

type What = PenaltyNow['penalty']['body']['what']

const SERVED: { readonly [W in What]?: string } = {
  stopAndGo: 'Serve the stop-and-go',
  driveThrough: 'Serve the drive-through',
  secondsHeld: 'Serve the seconds held',
}
