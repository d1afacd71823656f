/** How long somebody is free. */
import { cutOut, type Stretch } from './stretches.ts'

/** The longest piece of any window without a duty; 0 where there is none. */
export function longestFree(duties: readonly Stretch[], windows: readonly Stretch[]): number {
  let longest = 0
  for (const window of windows) {
    for (const { fromAt, toAt } of cutOut(window, duties))
      longest = Math.max(longest, toAt - fromAt)
  }
  return longest
}
