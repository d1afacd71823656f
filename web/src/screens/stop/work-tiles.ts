/** What *More work* offers: this car's faults, its list for between segments, and what is usual in a stop. */
import type { Car } from '@pitlamp/race'
import type { Tile } from '../../parts/shown.ts'
import { cautionsFor } from '../../parts/cautions.ts'
import type { Job } from './jobs.ts'

/** Common practice, no source. */
const USUAL = [
  'Wipe tyres',
  'Brush braid',
  'Exchange rear axle set',
  'Oil axles',
  'Tighten screws',
  'Solder a wire',
  'Glue a part',
]

/** Faults first. Work that can hurt says so on its tile. */
export function workTiles(car: Car | undefined, jobs: readonly Job[]): readonly Tile[] {
  const open = new Set(jobs.map(({ what }) => what.toLowerCase()))
  const faults = (car?.faultTiles ?? []).map((word) => ({
    id: `fault ${word}`,
    word,
    hint: 'fault',
  }))
  const work = [...(car?.betweenWork ?? []), ...USUAL].map((word) => ({
    id: `work ${word}`,
    word,
    hint: cautionsFor(word).length > 0 ? 'mind the caution' : undefined,
  }))
  const seen = new Set<string>()
  return [...faults, ...work].filter(({ word }) => {
    const name = word.toLowerCase()
    const isNew = !open.has(name) && !seen.has(name)
    seen.add(name)
    return isNew
  })
}
