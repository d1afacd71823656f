import { expect, it } from 'vitest'
import { cautionsFor, isHotWork } from './cautions.ts'

const hurts = (job: string) => cautionsFor(job).map(({ of }) => of)

it.for([
  ['Solder the lead wire', ['solder']],
  ['Tail on, hot iron', ['solder']],
  ['Glue body post', ['glue']],
  ['Wipe tyres with lighter fluid', ['solvent']],
  ['Tyre truing', ['rotaryTool']],
  ['Brush the track braid', ['liveTrack']],
  ['New button cells, lights', ['buttonCell']],
  ['LiPo of the lap counter', ['lithiumCell']],
  ['Drill, then EPOXY', ['glue', 'rotaryTool']],
] as const)('knows what hurts in “%s”', ([job, wanted]) => {
  expect(hurts(job)).toEqual(wanted)
})

it('says nothing of work that names nothing of the kind', () => {
  // “environment” has “iron” in it, “trailing” has “rail”: whole words only.
  for (const job of ['Rear wing', 'Exchange the rear axle set', 'Environment', 'Trailing arm', ''])
    expect(hurts(job)).toEqual([])
})

it('counts hot, glued and solvent work as no work for a hurry, the rest not', () => {
  expect(['Solder a wire', 'Glue the wing', 'Thinner'].map(isHotWork)).toEqual([true, true, true])
  expect(['Grind', 'Coin cell', 'Lithium pack', 'Rail', 'Gears'].some(isHotWork)).toBe(false)
})
