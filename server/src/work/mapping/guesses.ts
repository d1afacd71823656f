/**
 * What nobody typed and no evidence tells yet. Each is common practice without a source, unless it names one; people
 * are told what a plan stands on.
 */

/** Of a lap time: how well a pace typed by hand is known, as one standard deviation. */
export const PACE_KNOWN_TO_PER_MILLE = 10
/** The same where no pace was typed and that of the others stands in for it. */
export const PACE_ASSUMED_KNOWN_TO_PER_MILLE = 50
/** Of a lap time: what an hour at the controller adds to it. */
export const SLOWER_PER_HOUR_PER_MILLE = 10
/** About twenty laps to find in (competitors, slotforum.com thread 58002), each a twentieth slower. */
export const FINDING_IN_LAPS = 1
/** Where nobody's pace is known. */
export const SOME_LAP_MS = 10_000
/** Slowing down, coming in and going out, beyond what the car stands. */
export const IN_AND_OUT_MS = 15_000
/** What taking up a duty costs, in laps, so that nobody runs about. */
export const DUTY_CHANGE_LAPS = 0.2
/** What keeping a wish is worth, in laps. */
export const WISH_LAPS = 5
/** A line of a plan is the same where both its ends moved by no more than this. */
export const SAME_WITHIN_MS = 60_000
