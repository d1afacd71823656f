/** Work on the car as tiles to tick: its open faults, then what is done between segments in the car's order. */
import { faultClocks, inForce, type State } from '@pitlamp/race'
import type { Seen } from './people.ts'
import type { ToRecord } from './to-record.ts'

export interface WorkItem {
  readonly id: string
  readonly word: string
  readonly done: boolean
  readonly isFault: boolean
}

/** Ticks count since the last segment ended, and before the start from the beginning. */
export function workList({ state, now }: Seen): readonly WorkItem[] {
  const since = state.raceControl.runs.at(-1)?.endAt ?? state.raceControl.runs.at(-1)?.greenAt ?? 0
  const faults = faultClocks(state, now)
    .filter(({ fault: { ended } }) => !ended || (ended.how === 'mended' && ended.at >= since))
    .map(({ fault }) => ({
      id: fault.entry,
      word: fault.fault,
      done: fault.ended !== undefined,
      isFault: true,
    }))
  const between = (inForce(state, 'car', now)?.betweenWork ?? []).map((work) => ({
    id: `work ${work}`,
    word: work,
    done: isTicked(state, work, since),
    isFault: false,
  }))
  return [...faults, ...between]
}

/** A mended fault is not opened again by a tick: its undo, or a correction, does that. */
export function workToRecord({ id, word, done, isFault }: WorkItem): ToRecord | undefined {
  if (isFault) {
    return done ? undefined : { kind: 'repairFinished.1', body: { fault: id }, word: 'Mended' }
  }
  const body = { work: word, done: !done }
  return { kind: 'workTicked.1', body, word: `${word} ${done ? 'not done' : 'done'}` }
}

function isTicked({ car }: State, work: string, since: number): boolean {
  const same = car.work.filter(
    ({ at, body }) => at >= since && body.work.toLowerCase() === work.toLowerCase(),
  )
  return same.at(-1)?.body.done ?? false
}
