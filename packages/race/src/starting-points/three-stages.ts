import type { ProgrammeItem } from '../documents/rules.ts'
import { MINUTE_MS, row, type StartingPoint } from './starting-point.ts'

/** Stages of eight segments of 60 min, of which 5 are lane change; between two stages a break. */
function stages(count: number): ProgrammeItem[] {
  const perStage = 8
  const all = row({
    ...{ count: count * perStage, lengthMs: 55 * MINUTE_MS, lane: 'notDrawnYet' },
    ...{ between: 'laneChange', betweenMs: 5 * MINUTE_MS },
  })
  return all.map((item, line): ProgrammeItem => {
    const place = Math.floor(line / 2)
    const stage = Math.floor(place / perStage) + 1
    if (item.kind === 'segment') {
      return { ...item, name: `Stage ${stage}, segment ${(place % perStage) + 1}`, stage }
    }
    return place % perStage === perStage - 1 ? { id: item.id, kind: 'break' } : item
  })
}

export const threeStages: StartingPoint = {
  id: 'three-stages-2015',
  called: 'Three stages of eight segments (Group C world endurance 2015)',
  source:
    'Group C world endurance, 2015, organiser’s rules v1.3 of 4 April 2015: doczz.net/doc/1067400',
  regulations: {
    name: 'Group C endurance in three stages',
    timeZone: 'UTC',
    programme: /* @__PURE__ */ stages(3),
    rules: [
      {
        id: 'lane-change',
        kind: 'laneChange',
        value: { lengthMs: 5 * MINUTE_MS },
        words: 'Segments of 60 minutes, of which 5 are lane change.',
      },
      {
        id: 'parc-ferme',
        kind: 'workAllowed',
        value: { during: 'parcFerme', allowed: false },
        words: 'Only judges touch cars in parc fermé.',
      },
      {
        id: 'points',
        kind: 'points',
        value: { per: 'stage', table: 'notKnownYet' },
        words: 'Points for each stage; the sum of the three decides.',
      },
    ],
    note: 'Only the leader of a team speaks to race control.',
  },
}
