/** Meetings to work out, for tests: segments in a row, a crew, and what a solver says of them. */
import type { WorkLine, WorkOut } from '@pitlamp/contract'
import {
  CAPTAINS_DEFAULTS,
  emptyState,
  type Crew,
  type Plan,
  type Regulations,
  type Rule,
} from '@pitlamp/race'
import loadHighs from 'highs'
import type { Meant } from '../mapping/ground.ts'
import { workOut } from '../work-out.ts'

export const MINUTE = 60_000
export const HOUR = 60 * MINUTE

export interface Given {
  /** Lengths in minutes. */
  readonly segments: readonly number[]
  readonly between?: 'laneChange' | 'break'
  readonly lanes?: readonly (number | 'sitOut')[]
  readonly people: readonly (Partial<Crew['people'][number]> & { readonly name: string })[]
  readonly rules?: readonly Rule[]
  /** Segment and minute, and what is not as usual about it. */
  readonly stops?: readonly (readonly [
    segment: number,
    minute: number,
    of?: Partial<Plan['stops'][number]>,
  ])[]
  readonly spans?: Plan['spans']
  readonly keptPeople?: Plan['keptPeople']
  /** Of hours of the clock. */
  readonly midnightAt?: number
}

export function personId(place: number): string {
  return `019b0000-0009-7000-8000-${String(place + 1).padStart(12, '0')}`
}

export function meantOf(given: Given): Meant {
  const { segments, between = 'laneChange', lanes = [], people, rules = [] } = given
  const programme = segments.flatMap((minutes, place): Regulations['programme'] => [
    ...(place > 0 ? [{ id: `b${place}`, kind: between, lengthMs: 5 * MINUTE } as const] : []),
    {
      ...{ id: `s${place + 1}`, kind: 'segment' as const },
      length: { by: 'time', lengthMs: minutes * MINUTE },
      ...(lanes[place] === undefined ? {} : { lane: lanes[place] }),
    },
  ])
  const stops = (given.stops ?? []).map(([segment, minute, of], place) => ({
    ...{ id: `t${place + 1}`, segment: `s${segment}`, atMs: minute * MINUTE, mandatory: true },
    ...of,
  }))
  return {
    recorded: emptyState,
    now: 0,
    drafts: {
      rules: {
        ...{ name: 'A race', timeZone: 'UTC', programme, rules: [...rules] },
        ...(given.midnightAt === undefined ? {} : { midnightAt: given.midnightAt }),
      },
      crew: { people: people.map((one, place) => ({ id: personId(place), duties: [], ...one })) },
      plan: {
        ...{ spans: given.spans ?? [], stops, captain: CAPTAINS_DEFAULTS },
        ...(given.keptPeople && { keptPeople: given.keptPeople }),
      },
    },
  }
}

export const PLAIN: WorkOut = {
  ...{ from: 'drafts', want: 'plan', duties: [] },
  balance: { toleranceMs: 15 * MINUTE, lapsPerHour: 40 },
}

const loaded = loadHighs()

/** The lines but those that say how far it has come. */
export async function saidOf(
  meant: Meant,
  asked: Partial<WorkOut> = {},
): Promise<readonly WorkLine[]> {
  const solver = await loaded
  const lines: WorkLine[] = []
  workOut(
    meant,
    { ...PLAIN, ...asked },
    {
      ...{ solver, shouldStop: () => false },
      say: (line) => void lines.push(line),
    },
  )
  return lines.filter(({ kind }) => kind !== 'working')
}
