export {
  cursor,
  type Kept,
  type Pending,
  type SetAside,
  type SyncState,
  type WhySetAside,
} from './log/state.ts'
export type { Effect, Keep, Pause, Step, SyncEvent } from './log/events.ts'
export { initialSync } from './log/initial.ts'
export { step } from './log/step.ts'
export { savedState, setAsideSentence, unsentCount, view, type SavedState } from './log/view.ts'
export { isSame } from './log/confirmed.ts'
export { copyOf } from './copy/copy-of.ts'
export { mergeCopies, type Merged } from './copy/merge-copies.ts'
export type { Clash } from './copy/merge-logs.ts'
export {
  newScreenClock,
  probesWanted,
  type Instants,
  type ProbeSample,
  type ScreenClock,
} from './clock/screen-clock.ts'
export { addSample } from './clock/samples.ts'
export { heardEpoch, noticeStep, startOver } from './clock/steps.ts'
export { reckon, type Reckoning } from './clock/reckon.ts'
export type { Standing } from './clock/bounds.ts'
export { reckonedByWall, type WallReckoning } from './clock/wall.ts'
