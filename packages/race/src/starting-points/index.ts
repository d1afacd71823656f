/** What the Rules screen offers to begin from: published sets first, then formats of our own. */
import { analogueSitOuts } from './analogue-sit-outs.ts'
import { analogueSixLanes } from './analogue-six-lanes.ts'
import { autumnEndurance } from './autumn-endurance.ts'
import { digitalThreeForties } from './digital-three-forties.ts'
import { enduranceCup } from './endurance-cup.ts'
import { fourHourEnduro } from './four-hour-enduro.ts'
import { pairsSeries } from './pairs-series.ts'
import type { StartingPoint } from './starting-point.ts'
import { threeStages } from './three-stages.ts'
import { twoTracks } from './two-tracks.ts'
import { wingAllRace } from './wing-all-race.ts'
import { wingRefitted } from './wing-refitted.ts'

export const STARTING_POINTS: readonly StartingPoint[] = [
  enduranceCup,
  twoTracks,
  autumnEndurance,
  pairsSeries,
  fourHourEnduro,
  threeStages,
  wingAllRace,
  wingRefitted,
  digitalThreeForties,
  analogueSixLanes,
  analogueSitOuts,
]
