/** The segment's end, and the hall's clock to be read. */
import { dutiesNow } from '../clocks/duties.ts'
import { segmentClock, type SegmentClock } from '../clocks/segment-clock.ts'
import { CAPTAINS_DEFAULTS } from '../documents/plan.ts'
import { inForce } from '../fold/in-force.ts'
import { segmentName } from '../fold/names.ts'
import type { State } from '../fold/state.ts'
import { atOf } from '../time/clock-map.ts'
import type { Obligation } from './obligation.ts'

export function clockDue(state: State, now: number): readonly Obligation[] {
  const clock = segmentClock(state, now)
  if (!clock) return []
  return [...segmentEnd(state, clock, now), ...readTheClock(state, clock, now)]
}

function segmentEnd(state: State, clock: SegmentClock, now: number): readonly Obligation[] {
  const { run, segment, lengthMs, running } = clock
  if (lengthMs === undefined) return []
  const isLast = segment.index === segment.of - 1
  const onDuty = dutiesNow(state).filter((span) => span.duty !== 'offDuty')
  return [
    {
      id: `segmentEnd:${run.entry}`,
      kind: 'segmentEnd',
      dueAt: atOf(run, lengthMs, now),
      held: !running,
      lengthMs,
      concerns: onDuty.map((span) => span.person),
      label: isLast ? 'Flag' : `${segmentName(state, run.segment)} ends`,
    },
  ]
}

/** Due since the press that made our clock less sure than the captain allows. */
function readTheClock(state: State, clock: SegmentClock, now: number): readonly Obligation[] {
  const { askForClockAtMs } = inForce(state, 'plan', now)?.captain ?? CAPTAINS_DEFAULTS
  const since = clock.run.knots.at(-1)?.at
  if (since === undefined || clock.boundMs <= askForClockAtMs) return []
  return [
    {
      id: `readTheClock:${clock.run.entry}:${since}`,
      kind: 'readTheClock',
      dueAt: since,
      held: false,
      concerns: [],
      label: 'Read the hall’s clock',
    },
  ]
}
