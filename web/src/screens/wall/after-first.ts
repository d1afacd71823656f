/** What the wall is not without, but not first: it comes after the first picture. */

export const fetchSheets = () => import('./WallSheetBody.svelte')
/** A wall gives its window to the stop while the car is in. */
export const fetchStop = () => import('../stop/Screen.svelte')
export const fetchLastStop = () => import('./LastStop.svelte')
/** It brings every check of the rules. */
export const fetchStayOut = () => import('./stay-out-shown.ts')
/** Sums up every segment of the race. */
export const fetchStanding = () => import('./standing-shown.ts')
