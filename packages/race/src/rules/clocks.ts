/** The clocks a rule may stop, what may interrupt them, and what is assumed while no rule says. */
export const CLOCKS = ['segment', 'stopMinimum', 'driving', 'repairLimit'] as const
export type Clock = (typeof CLOCKS)[number]
export const INTERRUPTIONS = ['trackCall', 'redFlag', 'laneChange'] as const
export type Interruption = (typeof INTERRUPTIONS)[number]
/** `startsAgain` is said of the minimum stop alone; elsewhere it is read as running on. */
export type ClockPolicy = 'runs' | 'holds' | 'startsAgain'

/**
 * For each clock the reading that cannot cost a penalty (a later GO, a driving limit and a repair limit that
 * come sooner). The segment clock is taken to hold, as where power and timing stop together: common practice,
 * no source.
 */
export const ASSUMED_POLICY: Readonly<Record<Clock, ClockPolicy>> = {
  segment: 'holds',
  stopMinimum: 'holds',
  driving: 'runs',
  repairLimit: 'runs',
}
