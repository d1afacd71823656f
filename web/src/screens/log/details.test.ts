import type { Body, Kind, ReadEntry } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { detailsOf } from './details.ts'

const names = {
  nameOf: (person: string) => person.toUpperCase(),
  segmentOf: (segment: string) => `segment ${segment}`,
  timeOf: (at: number) => `${at / 1_000} s`,
  entryOf: (entry: string) => `[${entry}]`,
}
const detailsFor = <K extends Kind>(kind: K, body: Body<K>) =>
  detailsOf({ kind, body } as unknown as ReadEntry, names)

it('says what the few words leave out', () => {
  expect(detailsFor('clockRead.1', { segment: 's2', shows: 'toGo', readingMs: 2_040_000 })).toBe(
    'segment s2 · the hall’s clock shows 34:00 to go',
  )
  expect(
    detailsFor('stopOut.1', {
      moment: 'leaving',
      work: [
        { what: 'Wipe tyres', done: true },
        { what: 'Braid', done: false },
      ],
      moves: [{ person: 'ana', duty: 'controller' }],
    }),
  ).toBe('wheels turning · Wipe tyres · Braid left · ANA drives')
})

it('says what a correction does, to which entry, and why', () => {
  const target = 'e1'
  const correction = (change: Body<'correction.1'>['change']) =>
    detailsFor('correction.1', { target, basedOn: target, change, reason: 'pressed late' })
  expect(correction({ what: 'void' })).toBe('[e1] · made void · pressed late')
  expect(correction({ what: 'replace', at: 4_000 })).toBe('[e1] · moved to 4 s · pressed late')
  expect(correction({ what: 'replace' })).toBe('[e1] · restored · pressed late')
})

it('is empty where the few words say it all', () => {
  expect(detailsFor('trackCall.1', {})).toBe('')
})
