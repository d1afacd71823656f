/** What a captain starts from. Each is meant to be changed; nothing holds before it is adopted. */
import {
  CAPTAINS_DEFAULTS,
  NOT_KNOWN_YET,
  type Car,
  type Crew,
  type Plan,
  type Regulations,
} from '@pitlamp/race'

const HOUR_MS = 3_600_000

export function firstRules(name: string, timeZone: string): Regulations {
  return {
    name,
    timeZone,
    programme: [{ id: 's1', kind: 'segment', length: { by: 'time', lengthMs: HOUR_MS } }],
    rules: [
      { id: 'stops', kind: 'mandatoryStops', value: { count: NOT_KNOWN_YET, per: 'segment' } },
      {
        id: 'minimum',
        kind: 'stopMinimum',
        value: { minimumMs: NOT_KNOWN_YET, from: NOT_KNOWN_YET, to: NOT_KNOWN_YET },
      },
    ],
  }
}

export const FIRST_CREW: Crew = { people: [] }

/** Faults a slot car is brought in for: common practice, no source. */
export const FIRST_CAR: Car = {
  name: 'Our car',
  faultTiles: [
    'Body loose',
    'Tyre',
    'Braid',
    'Guide',
    'Lead wire',
    'Gear mesh',
    'Axle',
    'Motor',
    'Lights',
  ],
}

export const FIRST_PLAN: Plan = { spans: [], stops: [], captain: CAPTAINS_DEFAULTS }

/** Ids of lines inside documents: short, and not used before in this document. */
export function freshId(prefix: string, taken: readonly { readonly id: string }[]): string {
  const ids = new Set(taken.map(({ id }) => id))
  let count = taken.length + 1
  while (ids.has(`${prefix}${count}`)) count += 1
  return `${prefix}${count}`
}
