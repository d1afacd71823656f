/** What is fetched after the first picture. */
export { laneChange } from '@pitlamp/race'
export { default as LaneChange } from './LaneChange.svelte'
