/** May hands touch the car now, in the words of the pit box. */
import type { HandsOnCar } from '@pitlamp/race'
import { lapsWords } from './penalty-words.ts'

export function handsWords({ allowed, costLaps }: HandsOnCar): string {
  if (allowed === 'notKnown') return 'Ask whether hands may touch the car'
  const cost = costLaps === undefined || costLaps === 0 ? '' : `, −${lapsWords(costLaps)}`
  return `${allowed ? 'Work allowed' : 'Hands off the car'}${cost}`
}
