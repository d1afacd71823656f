/** What stands at the right of the clock: hands, stops, and the time in the hall. */
import { handsOnCar, stopsDone, type State } from '@pitlamp/race'
import { handsWords } from '../../parts/hands.ts'
import { clockTime } from '../../parts/time.ts'

export interface Fact {
  readonly label: string
  readonly value: string
  /** Understood without its label where there is little room. */
  readonly speaks: boolean
}

export function factsOf(state: State, now: number, timeZone: string): readonly Fact[] {
  const { done, demanded } = stopsDone(state, now)
  return [
    { label: 'The car', value: handsWords(handsOnCar(state, now)), speaks: true },
    ...(demanded === undefined
      ? []
      : [{ label: 'Stops made', value: `${done} of ${demanded}`, speaks: false }]),
    { label: 'In the hall', value: clockTime(now, timeZone), speaks: true },
  ]
}
