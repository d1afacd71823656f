/** What the tests press and read, in seconds after the first green. */
import {
  changesFor,
  continuedTimeline,
  judge,
  lanesOf,
  resultOf,
  type Body,
  type Finding,
  type Kind,
  type State,
} from '@pitlamp/race'
import { at, type Race } from '../scripted-race.ts'
import type { Screen } from '../screen.ts'
import { linesOf } from './laps.ts'

/** What pressing something tells each person. */
export async function told(
  race: Race,
  seconds: number,
  press: () => Promise<unknown>,
): Promise<(person: string) => readonly string[]> {
  const before = await race.state()
  await press()
  const after = await race.state()
  const seen = (state: State) => ({ state, now: at(seconds) })
  return (person) => changesFor(seen(before), seen(after), person).map(({ sentence }) => sentence)
}

export function tells<K extends Kind>(
  race: Race,
  seconds: number,
  said: readonly [Screen, K, Body<K>],
): Promise<(person: string) => readonly string[]> {
  return told(race, seconds, () => race.say(seconds, said))
}

/** Race control's classification of a segment, entered by the captain. */
export async function brought(
  race: Race,
  seconds: number,
  { segment, rows }: { readonly segment: string; readonly rows: string },
): Promise<void> {
  const lines = linesOf(rows)
  const shown = { standing: 'provisional', scope: 'segment', segment, lines } as const
  await race.say(seconds, [race.captains, 'classification.1', shown])
}

/** Lanes by number, in the order of the segments. */
export function laneNumbers(state: State, seconds: number): readonly unknown[] {
  return [...lanesOf(state, at(seconds)).values()].map((lane) =>
    typeof lane === 'object' ? lane.lane : lane,
  )
}

/** What was raced and what is still planned, as it stands then. */
export function findingsAt(state: State, seconds: number): readonly Finding[] {
  return judge(state, continuedTimeline(state, at(seconds)), at(seconds))
}

export function broken(found: readonly Finding[]): readonly unknown[] {
  return found
    .filter(({ verdict }) => verdict === 'broken')
    .map(({ id, people, value, limit }) => [id, people, value, limit])
}

/** `1 Cobalt Quay 770.35 behind 0.00, bestSegment`, or with points in place of the distance. */
export function places(state: State, seconds: number): readonly string[] {
  const lines = resultOf(state, at(seconds))?.lines ?? []
  return lines.map(({ place, entrant, distance, behind, points, brokenBy, classified }) => {
    const far =
      points === undefined ? `${said(distance)} behind ${said(behind)}` : `${points} points`
    const why = brokenBy === undefined ? '' : `, ${brokenBy}`
    return `${place} ${entrant} ${far}${why}${classified ? '' : ', not classified'}`
  })
}

function said({ laps, sections = NaN }: { laps: number; sections?: number }): string {
  return `${laps}.${String(sections).padStart(2, '0')}`
}
