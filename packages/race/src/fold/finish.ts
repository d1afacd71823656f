/** Closes the draft: indexes become the lists and records of the state. */
import type { Draft } from './draft.ts'
import type { State } from './state.ts'

export function finish({ documents, raceControl, people, car, record, problems }: Draft): State {
  const { running: _running, interrupted: _interrupted, releasedAt, ...rooms } = raceControl
  const { holding: _holding, ...peoples } = people
  return {
    documents,
    raceControl: {
      ...rooms,
      lanes: Object.fromEntries(raceControl.lanes),
      penalties: [...raceControl.penalties.values()],
      ...(releasedAt === undefined ? {} : { releasedAt }),
    },
    people: {
      ...peoples,
      availability: Object.fromEntries(people.availability),
      calls: [...people.calls.values()],
    },
    car: { ...car, faults: [...car.faults.values()] },
    record,
    problems,
  }
}
