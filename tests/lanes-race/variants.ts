/** The same race as two race directors rule it, and what is right under each: worked out by hand. */
import type { Rule } from '@pitlamp/race'

export interface Variant {
  readonly also: readonly Rule[]
  /** What of the stopped running of the fourth segment counts. */
  readonly counts: { readonly lapsCount: boolean; readonly drivingCounts: boolean }
  /** Ours once five segments are through and the five laps are taken. */
  readonly afterPenalty: { readonly laps: number; readonly sections: number }
  /** Gwen's, in seconds: the fourth segment and the last one, with or without the stopped running. */
  readonly gwenDrove: number
  readonly result: readonly string[]
}

/**
 * The sum decides. Ours: 141.20 + 140.35 + 142.15 + 140.40 + 139.45 + 70.30 = 772 laps and 185 sections, 775.35, and five
 * laps less. Hop Yard: 140.45 + 140.40 + 139.45 + 141.30 + 139.20 + 68.05 = 767 and 185, 770.35: as far as we came, and
 * our best segment is 142.15 against 141.30. Salt Mill: 139.10 + 140.05 + 140.20 + 138.45 + 139.40 + 69.45 = 765 and 165.
 * Kiln Lane: 138.15 + 139.30 + 138.00 + 137.10 + 138.35 + 69.20 = 759 and 110. Glass Works: 136.30 + 137.20 + 137.10 +
 * 136.00 + 136.15 + 68.10 = 750 and 85. Rook Hill: 135.00 + 134.45 + 135.35 + 134.30 + 135.20 + 67.40 = 740 and 170.
 * Tallow Street: 121.00 + 120.25 + 121.10 + 120.30 + 119.45 + 120.40 = 721 and 150. Weir House: 119.05 + 118.40 + 119.00 +
 * 120.05 + 118.15 + 119.25 = 713 and 90; 93 of 100 of 770 are 716.1 laps, and 714 are not enough.
 */
export const SUMMED: Variant = {
  also: [],
  counts: { lapsCount: false, drivingCounts: true },
  // 141.20 + 140.35 + 142.15 + 140.40 = 563 and 110, less 5 laps.
  afterPenalty: { laps: 560, sections: 10 },
  // 500 + 1,200 + 600.
  gwenDrove: 2_300,
  result: [
    '1 Cobalt Quay 770.35 behind 0.00, bestSegment',
    '2 Hop Yard 770.35 behind 0.00, bestSegment',
    '3 Salt Mill 768.15 behind 2.20',
    '4 Kiln Lane 761.10 behind 9.25',
    '5 Glass Works 751.35 behind 19.00',
    '6 Rook Hill 743.20 behind 27.15',
    '7 Tallow Street 724.00 behind 46.35',
    '8 Weir House 714.40 behind 55.45, not classified',
  ],
}

/**
 * Points a stage. The first by the sums, both runnings of the fourth in them: ours 482.30, Hop Yard 480.10, Salt Mill
 * 476.35, Kiln Lane 473.35, Glass Works 466.15, Rook Hill 460.05, Tallow Street 362.35, Weir House 356.45. The second as
 * race control placed it: Hop Yard, Salt Mill, we, Kiln Lane, Glass Works, Rook Hill, Tallow Street, Weir House.
 */
export const IN_POINTS: Variant = {
  also: [
    {
      id: 'points',
      kind: 'points',
      value: { per: 'stage', table: [25, 18, 15, 12, 10, 8, 6, 4] },
    },
  ],
  counts: { lapsCount: true, drivingCounts: false },
  // 58.10 more.
  afterPenalty: { laps: 618, sections: 20 },
  // 1,200 + 600.
  gwenDrove: 1_800,
  result: [
    // 18 + 25.
    '1 Hop Yard 43 points',
    // 25 + 15.
    '2 Cobalt Quay 40 points',
    '3 Salt Mill 33 points',
    '4 Kiln Lane 24 points',
    '5 Glass Works 20 points',
    '6 Rook Hill 16 points',
    '7 Tallow Street 12 points, not classified',
    // 93 of 100 of 829 are 770.97 laps.
    '8 Weir House 8 points, not classified',
  ],
}

/**
 * Race control halves the seventh segment of whoever sat out the last, which was half as long: Tallow Street 120.30 +
 * 119.45 + 60.20 = 300.45, Weir House 120.05 + 118.15 + 59.37 = 298.07. Ours with five laps less: 351.15 − 5.
 */
export const SECOND_STAGE =
  'Hop Yard 349.05, Salt Mill 348.30, Cobalt Quay 346.15, Kiln Lane 345.15, Glass Works 340.25, Rook Hill 337.40, Tallow Street 300.45, Weir House 298.07'
