/** What the scripted meeting on fixed lanes goes by: six lanes, eight teams, eight segments of twenty minutes. */
import type { Crew, Regulations, Rule, SegmentItem } from '@pitlamp/race'
import { at } from '../scripted-race.ts'

export const EDDA = '018f3a50-6a00-7000-8000-00000000e001'
export const FALK = '018f3a50-6a00-7000-8000-00000000e002'
export const GWEN = '018f3a50-6a00-7000-8000-00000000e003'
export const HALE = '018f3a50-6a00-7000-8000-00000000e004'

const SECOND_MS = 1_000
export const SEGMENT_MS = 1_200 * SECOND_MS

const RULES: readonly Rule[] = [
  {
    id: 'track',
    kind: 'tracks',
    value: {
      ...{ tracks: 1, lanes: 6, sections: 50 },
      colours: ['red', 'white', 'green', 'blue', 'yellow', 'black'],
    },
  },
  { id: 'order', kind: 'laneOrder', value: { moves: 'oddUpEvenDown', sitOutsAfter: [5, 2] } },
  { id: 'first', kind: 'startingLane', value: { by: 'qualifying' } },
  {
    id: 'change',
    kind: 'laneChange',
    value: { lengthMs: 300 * SECOND_MS, earliestMs: 180 * SECOND_MS, movedBy: 'judges' },
  },
  { id: 'restart', kind: 'restart', value: { at: 'sameSection' } },
  {
    id: 'hands',
    kind: 'workAllowed',
    clause: '4.2',
    value: { during: 'laneChange', allowed: false },
  },
  { id: 'post', kind: 'postByLane', value: { tied: true } },
  { id: 'sitOut', kind: 'sitOutDuty', value: { obliges: 'marshalSomePosts', posts: 2 } },
  { id: 'dark', kind: 'darkSegments', value: { segments: ['s5', 's6'] } },
  {
    id: 'lights',
    kind: 'compulsoryRepair',
    clause: '5.1',
    value: {
      ...{ what: 'Lights', withinMs: 120 * SECOND_MS, underGreen: true, costLaps: 1 },
      when: 'darkSegments',
    },
  },
  { id: 'each', kind: 'drivingSegments', value: { atLeast: 2, atMost: 2 } },
  {
    id: 'driving',
    kind: 'drivingTime',
    value: { atLeastMs: 2_000 * SECOND_MS, atMostMs: 2_560 * SECOND_MS },
  },
  { id: 'cut', kind: 'cutProRata', value: { cut: true } },
  {
    id: 'call',
    kind: 'clockPolicy',
    value: { clock: 'segment', under: 'trackCall', does: 'holds' },
  },
  {
    id: 'call-driving',
    kind: 'clockPolicy',
    value: { clock: 'driving', under: 'trackCall', does: 'holds' },
  },
  { id: 'scoring', kind: 'scoring', value: { by: 'lapsAndSections', sections: 'added' } },
  { id: 'ties', kind: 'ties', value: { order: ['bestSegment', 'runOff'] } },
  { id: 'classified', kind: 'classified', value: { atLeast: 930 } },
]

/** Two stages of four segments; `also` beside the rules above. The start is planned twenty minutes before it was. */
export function rulesOf(also: readonly Rule[]): Regulations {
  const programme = Array.from({ length: 8 }, (_, place): Regulations['programme'] => {
    const segment: SegmentItem = {
      ...{ id: `s${place + 1}`, kind: 'segment', lane: 'notDrawnYet' },
      ...{ length: { by: 'time', lengthMs: SEGMENT_MS }, stage: place < 4 ? 1 : 2 },
      ...(place === 0 ? { plannedAt: at(-1_200) } : {}),
    }
    return place === 7 ? [segment] : [segment, { id: `c${place + 1}`, kind: 'laneChange' }]
  }).flat()
  return {
    name: 'Eight twenties at the Tide Mill',
    timeZone: 'Europe/Dublin',
    programme: [{ id: 'quali', kind: 'qualifying' }, ...programme],
    rules: [...RULES, ...also],
  }
}

export const crew: Crew = {
  people: [
    { id: EDDA, name: 'Edda', duties: [] },
    { id: FALK, name: 'Falk', duties: [] },
    { id: GWEN, name: 'Gwen', duties: [] },
    // Ten minutes before the end, as the programme stood at first: the last segment was to run from 9,300 to 10,500.
    { id: HALE, name: 'Hale', duties: ['post'], there: [{ id: 'day', toAt: at(11_100) }] },
  ],
}

export const car = { name: 'Shrike Two', faultTiles: ['Lights', 'Braid'] }
