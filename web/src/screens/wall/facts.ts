/** What stands at the right of the clock: standing, hands, stops, and the time in the hall. */
import { handsOnCar, stopsDone } from '@pitlamp/race'
import { handsWords } from '../../parts/hands.ts'
import type { HeaderFact } from '../../parts/shown.ts'
import { clockTime } from '../../parts/time.ts'
import type { Seen } from './people.ts'
import type { standingShown } from './standing-shown.ts'

interface MaySay {
  readonly stand: boolean
  readonly work: boolean
}

type Stand = typeof standingShown

/**
 * The standing and the car can be pressed where this device may say something of them. What puts the standing in
 * words comes after the first picture; until then there is none.
 */
export function factsOf(seen: Seen, may: MaySay, stand: Stand | undefined): readonly HeaderFact[] {
  const { state, now, crew } = seen
  const { done, demanded } = stopsDone(state, now)
  return [
    ...(stand ? standingFact(seen, may.stand, stand) : []),
    {
      label: 'The car',
      value: handsWords(handsOnCar(state, now)),
      speaks: true,
      press: may.work ? 'car' : undefined,
    },
    ...(demanded === undefined
      ? []
      : [{ label: 'Stops made', value: `${done} of ${demanded}`, speaks: false }]),
    { label: 'In the hall', value: clockTime(now, crew.timeZone), speaks: true },
  ]
}

/** Nobody stands anywhere before the first green. */
function standingFact(seen: Seen, mayStand: boolean, stand: Stand): readonly HeaderFact[] {
  if (seen.state.raceControl.runs.length === 0) return []
  const shown = stand(seen)
  const press = mayStand ? ({ press: 'standing' } as const) : {}
  if (!shown)
    return mayStand ? [{ label: 'Standing', value: 'not read', speaks: false, ...press }] : []
  const { place, gaps, asAt } = shown
  const under = gaps === '' ? undefined : gaps
  return [{ label: `Standing ${asAt}`, value: place, under, speaks: true, ...press }]
}
