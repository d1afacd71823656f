/** Published sets to start from: large, so that they are fetched when somebody asks for them. */
import { STARTING_POINTS } from '@pitlamp/race'
import type { StartingPoint } from './rules-model.svelte.ts'

export const startingPoints: readonly StartingPoint[] = STARTING_POINTS
