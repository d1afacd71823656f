/** How far somebody came: whole laps, and the track section after the last of them. Never a decimal. */

export interface Distance {
  readonly laps: number
  /** Absent where it is not known, as while cars run. */
  readonly sections?: number
}

/**
 * Laps to laps, sections to sections; with the track's sections per lap a full lap of sections is carried. Without
 * it sections beyond a lap stay sections, and what would need borrowing loses them: one whole lap less is what is
 * certain. Sections that only one of the two has are not known of the sum.
 */
export function addDistance(a: Distance, b: Distance, sectionsPerLap?: number): Distance {
  const laps = a.laps + b.laps
  if (a.sections === undefined || b.sections === undefined) return { laps }
  return carried(laps, a.sections + b.sections, sectionsPerLap)
}

/** What `a` has more than `b`; laps may be below 0, sections are counted forwards from there: −1.45 is 5 of 50 behind. */
export function gapBetween(a: Distance, b: Distance, sectionsPerLap?: number): Distance {
  const laps = a.laps - b.laps
  if (a.sections === undefined || b.sections === undefined) return { laps }
  return carried(laps, a.sections - b.sections, sectionsPerLap)
}

function carried(laps: number, sections: number, sectionsPerLap: number | undefined): Distance {
  if (sectionsPerLap === undefined || sectionsPerLap === 0) {
    return sections < 0 ? { laps: laps - 1 } : { laps, sections }
  }
  const whole = Math.floor(sections / sectionsPerLap)
  return { laps: laps + whole, sections: sections - whole * sectionsPerLap }
}
