/** A published set adopted and raced on a real server: what it leaves open is filled in, and said beside the test. */
import {
  resultOf,
  STARTING_POINTS,
  type Body,
  type Crew,
  type Plan,
  type Regulations,
  type Rule,
  type State,
} from '@pitlamp/race'
import { at, Race } from '../scripted-race.ts'

/** Names are invented. */
export const DRIVERS = ['Anouk', 'Bela', 'Cosmo', 'Dagny', 'Emrys', 'Fenna'].map((name, place) => ({
  ...{ id: `018f3a50-6a00-7000-8000-00000000f00${place + 1}`, name, duties: [] },
}))
const crew: Crew = { people: DRIVERS }
const captain = { goMarginMs: 2_000, askForClockAtMs: 5_000, hotWorkInStops: false }

interface Filled {
  readonly rules?: (rule: Rule) => Rule
  readonly programme?: Regulations['programme']
  readonly plan?: Pick<Plan, 'spans' | 'stops'>
}

/** Each is raced on the server of the one before it. */
let last: Race | undefined

export async function closePlayed(): Promise<void> {
  await last?.close()
}

/** The set as it is published, with what it leaves open filled in. */
export async function playing(id: string, filled: Filled = {}): Promise<Race> {
  const point = STARTING_POINTS.find((one) => one.id === id)
  if (!point) throw new Error(`There is no starting point ${id}.`)
  const { regulations } = point
  const rules: Regulations = {
    ...regulations,
    programme: filled.programme ?? regulations.programme,
    rules: regulations.rules.map(filled.rules ?? ((rule) => rule)),
  }
  const documents = { rules, crew, plan: planOf(filled.plan) }
  last = await Race.open({ name: regulations.name, documents }, last)
  return last
}

export function planOf(
  { spans, stops }: NonNullable<Filled['plan']> = { spans: [], stops: [] },
): Plan {
  return { spans, stops, captain }
}

/** Green and the end, in seconds after the first green. */
export async function run(race: Race, segment: string, [from, to]: readonly [number, number]) {
  await race.say(from, [race.wall, 'green.1', { segment }])
  await race.say(to, [race.wall, 'segmentEnd.1', { segment }])
}

/** `Us 10.35, Wren 9.00`: in order, laps and sections, or whole laps. */
export async function shows(
  race: Race,
  seconds: number,
  [segment, rows]: readonly [string, string],
) {
  const lines = rows.split(', ').map((row, index): Body<'classification.1'>['lines'][number] => {
    const [, entrant = '', laps = '', section] = /^(\w+) (\d+)(?:\.(\d+))?$/.exec(row) ?? []
    return {
      ...{ place: index + 1, entrant, laps: Number(laps), ours: entrant === 'Us' },
      ...(section === undefined ? {} : { section: Number(section) }),
    }
  })
  const shown = { standing: 'provisional', scope: 'segment', segment, lines } as const
  await race.say(seconds, [race.captains, 'classification.1', shown])
}

/** `Us 591`, or `Us 21.25`, or points. */
export function results(state: State, seconds: number): readonly string[] {
  return (resultOf(state, at(seconds))?.lines ?? []).map(({ entrant, points, distance }) => {
    const { laps, sections } = distance
    if (points !== undefined) return `${entrant} ${points} points`
    return sections === undefined ? `${entrant} ${laps}` : `${entrant} ${laps}.${sections}`
  })
}
