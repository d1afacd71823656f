/** Lantern Forty with everything a wall can be asked for: lanes, energy, allowances, penalties, work between segments. */
import type { DocumentContent } from '@pitlamp/race'
import { adoption, LANTERN_FORTY, type EnteredMeeting } from './lantern-forty.ts'

const MINUTE_MS = 60_000

const rules: DocumentContent<'rules'> = {
  ...LANTERN_FORTY.rules,
  rules: [
    ...LANTERN_FORTY.rules.rules,
    { id: 'tracks', kind: 'tracks', value: { tracks: 1, lanes: 6, sections: 50 } },
    { id: 'lanes', kind: 'startingLane', value: { by: 'draw' } },
    {
      id: 'wing',
      kind: 'compulsoryRepair',
      clause: '7.2',
      value: { what: 'Rear wing', laps: 4, underGreen: false, costLaps: 1 },
    },
    {
      id: 'tyres',
      kind: 'allowance',
      value: { of: 'tyreSets', count: 4, when: 'freely', costLaps: 5 },
    },
    { id: 'motors', kind: 'allowance', value: { of: 'motors', count: 1, when: 'onFailure' } },
    { id: 'energy', kind: 'energy', value: { fullLaps: 120, atEmpty: 'stands' } },
    { id: 'longest', kind: 'continuousDriving', value: { atMostMs: 20 * MINUTE_MS } },
    {
      id: 'held',
      kind: 'penalty',
      value: {
        for: 'Leaving the box early',
        is: 'stopAndGo',
        per: 'occurrence',
        scope: 'race',
        withinLaps: 5,
        contestableMs: 30 * MINUTE_MS,
      },
    },
  ],
}
/** Ten seconds a lap: what is reckoned in laps is easily checked. */
const crew: DocumentContent<'crew'> = {
  people: LANTERN_FORTY.crew.people.map((person) => ({ ...person, paceMs: 10_000 })),
}
const car: DocumentContent<'car'> = {
  ...LANTERN_FORTY.car,
  betweenWork: ['Clean the track side', 'Oil the bearings', 'Check the braid'],
}

export async function adoptWhole({ press }: EnteredMeeting): Promise<void> {
  for (const [document, content] of Object.entries({ rules, crew, car })) {
    const body = { ...adoption(document as 'rules' | 'crew' | 'car', content), version: 2 }
    await press('adopted.1', body)
  }
}
