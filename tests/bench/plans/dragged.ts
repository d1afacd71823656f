/** What runs while a finger drags, in one bundle: see `../bundle/bundled.ts`. */
export { findings } from '@pitlamp/race'
export { longPlan } from './long-plan.ts'
