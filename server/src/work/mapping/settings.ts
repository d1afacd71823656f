import type { WorkOut } from '@pitlamp/contract'

/** How the captain wants it worked out, whatever from. */
export type Settings = Pick<WorkOut, 'balance' | 'stopEveryMs' | 'changeEveryMs' | 'duties'>
