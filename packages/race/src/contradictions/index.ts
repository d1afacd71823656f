/** Everything that cannot hold together in rules and crew, each found by a file of its own. */
import type { Crew } from '../documents/crew.ts'
import type { Regulations } from '../documents/rules.ts'
import { categoryOfNobody } from './category-of-nobody.ts'
import { clockStartsAgain } from './clock-starts-again.ts'
import type { Contradiction } from './contradiction.ts'
import { groundOf, type Look } from './ground.ts'
import { lanesOutside } from './lanes-outside.ts'
import { leastAboveMost } from './least-above-most.ts'
import { leastTogether } from './least-together.ts'
import { mostTogether } from './most-together.ts'
import { restForTooFew } from './rest-for-too-few.ts'
import { saidTwice } from './said-twice.ts'
import { segmentsGone } from './segments-gone.ts'
import { segmentsOfNothing } from './segments-of-nothing.ts'
import { stopOfNothing, stopsWithoutRoom } from './stops-without-room.ts'
import { tooFewPeople } from './too-few-people.ts'
import { windowsOutside } from './windows-outside.ts'
import { windowsWithoutStops } from './windows-without-stops.ts'

export type { Contradiction }

const LOOKS: readonly Look[] = [
  segmentsOfNothing,
  segmentsGone,
  lanesOutside,
  leastAboveMost,
  saidTwice,
  leastTogether,
  mostTogether,
  restForTooFew,
  tooFewPeople,
  categoryOfNobody,
  windowsWithoutStops,
  windowsOutside,
  stopsWithoutRoom,
  stopOfNothing,
  clockStartsAgain,
]

export function contradictions(regulations: Regulations, crew: Crew): readonly Contradiction[] {
  const ground = groundOf(regulations, crew)
  return LOOKS.flatMap((look) => look(ground))
}
