/** The same race under two sets of clock policies, and what is right in each: seconds, worked out by hand. */
import type { Policies } from './documents.ts'

export interface Variant {
  readonly policies: Policies
  /** What the hall's clock shows 300 s after green: five seconds less than ours reckons. */
  readonly hallToGo: number
  /** When the car leaves its first stop, and when the first two segments end. */
  readonly leaves: number
  readonly ends: readonly [number, number]
  readonly right: Right
}

/** The arithmetic stands beside each. */
interface Right {
  readonly clockAt640: number
  readonly limitLeft: readonly [at430: number, at699: number]
  readonly stopAt650: { readonly remaining: number; readonly goAt: number }
  readonly stopAt670: { readonly remaining: number }
  readonly stopAt690: { readonly remaining: number; readonly goAt: number }
  readonly wingRunWith: number
  readonly stint: number
  readonly braid: readonly [beforeLate: number, after: number]
  readonly driven: Readonly<Record<'Runa' | 'Pell' | 'Sorrel', number>>
}

export const HOLDS: Variant = {
  policies: { segment: 'holds', stopMinimum: 'holds', driving: 'holds', repairLimit: 'holds' },
  // Reckoned: 1,200 − (300 − 40 under the call) = 940.
  hallToGo: 935,
  leaves: 725,
  // 265 gone at 300; held 30 at 500 and 20 at 660: 300 + 935 + 50. Then 2,000 + 1,200 + 25.
  ends: [1_285, 3_225],
  right: {
    // 265 + (640 − 300) − 30.
    clockAt640: 575,
    // Noted at 404: 300 − 26; and 300 − (699 − 404 − 30 − 20).
    limitLeft: [274, 55],
    // 60 − 10; 640 + 60 + 2.
    stopAt650: { remaining: 50, goAt: 702 },
    // Stood at 660, after 20 of 60.
    stopAt670: { remaining: 40 },
    // 50 since it stopped, 20 of them held; GO 20 later than before.
    stopAt690: { remaining: 30, goAt: 722 },
    // 700 − 404 − 30 − 20.
    wingRunWith: 246,
    // 725 − 40 − 30 − 20.
    stint: 635,
    // Noted 2,200, mended 2,647; the call of 25 s was known only later.
    braid: [447, 422],
    driven: {
      // 635 in the first segment, 5,200 − 4,656 in the third.
      Runa: 1_179,
      // 1,285 − 725 in the first, 2,647 − 2,000 − 25 in the second.
      Pell: 1_182,
      // 3,225 − 2,647 in the second, 4,656 − 4,000 in the third.
      Sorrel: 1_234,
    },
  },
}

export const RUNS: Variant = {
  policies: { segment: 'runs', stopMinimum: 'startsAgain', driving: 'runs', repairLimit: 'runs' },
  // Reckoned: 1,200 − 300 = 900.
  hallToGo: 895,
  leaves: 745,
  // 300 + 895, and 2,000 + 1,200.
  ends: [1_195, 3_200],
  right: {
    // 305 at 300, and 340 more.
    clockAt640: 645,
    // 300 − 26; 300 − (699 − 404).
    limitLeft: [274, 5],
    stopAt650: { remaining: 50, goAt: 702 },
    // The whole of it until the call is over.
    stopAt670: { remaining: 60 },
    // It began anew at 680: 60 − 10; 680 + 60 + 2.
    stopAt690: { remaining: 50, goAt: 742 },
    // 700 − 404.
    wingRunWith: 296,
    stint: 745,
    braid: [447, 447],
    driven: {
      // 745 + 544.
      Runa: 1_289,
      // 1,195 − 745, and 647.
      Pell: 1_097,
      // 3,200 − 2,647, and 656.
      Sorrel: 1_209,
    },
  },
}
