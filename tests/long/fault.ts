/** More power cuts and more kills than `npm test` makes, on the same disks and with the same audits. */
import { join } from 'node:path'
import type { Row } from '../bench/row.ts'
import { chainOfCuts } from '../power/chain.ts'
import { compile } from '../power/compile.ts'
import { newRandom } from '../power/random.ts'
import { killAgainAndAgain } from '../restart/kills.ts'
import { atLeast, atMost, exactly } from './figures.ts'

export interface Fault {
  readonly cuts: number
  readonly kills: number
  readonly seed: number
}

/** A data folder goes through so many cuts, then a new one begins. */
const CUTS_A_CHAIN = 25
/** Its countdowns are worked out for the first minutes. */
const KILLS_A_RACE = 20
const KILLED_WITHIN_MS = 25
const COUNTDOWN_OFF_MS = 100

export async function fault({ cuts, kills, seed }: Fault): Promise<readonly Row[]> {
  return [...(await powerCuts(cuts, seed)), ...(await serverKills(kills, seed))]
}

/** Why this machine cannot cut the power of a disk; undefined where it can. */
export function cannotCutPower(): string | undefined {
  const compiled = compile(SYNCED_ONLY)
  return 'reason' in compiled ? compiled.reason : undefined
}

const SYNCED_ONLY = join(import.meta.dirname, '../power/synced-only.c')

export async function powerCuts(cuts: number, seed: number): Promise<readonly Row[]> {
  const compiled = compile(SYNCED_ONLY)
  const figure = (name: string) => `${cuts} power cuts, seed ${seed}: ${name}`
  if ('reason' in compiled) {
    const told = figure(`not made: ${compiled.reason}`)
    return [exactly(cuts, { figure: told, value: 0, unit: 'cuts' })]
  }
  const sum = { acknowledged: 0, lost: 0, gaps: 0, twice: 0, unsent: 0 }
  for (let made = 0; made < cuts; made += CUTS_A_CHAIN) {
    const chain = { cuts: Math.min(CUTS_A_CHAIN, cuts - made), seed: seed + made }
    const found = await chainOfCuts({ ...chain, library: compiled.library })
    for (const name of Object.keys(sum) as (keyof typeof sum)[]) sum[name] += found[name]
    console.error(`${made + chain.cuts} power cuts: ${JSON.stringify(sum)}`)
  }
  return [
    // Cut off under load, not while idle.
    atLeast(cuts, { figure: figure('acknowledged'), value: sum.acknowledged, unit: 'entries' }),
    ...noneOf(sum, figure),
  ]
}

export async function serverKills(kills: number, seed: number): Promise<readonly Row[]> {
  const random = newRandom(seed)
  const sum = { acknowledged: 0, lost: 0, gaps: 0, twice: 0, unsent: 0, incidents: 0 }
  let [disagreed, countdownOffMs] = [0, 0]
  for (let made = 0; made < kills; made += KILLS_A_RACE) {
    const some = Math.min(KILLS_A_RACE, kills - made)
    const afterMs = Array.from({ length: some }, () => random.below(KILLED_WITHIN_MS))
    const found = await killAgainAndAgain(afterMs)
    for (const name of Object.keys(sum) as (keyof typeof sum)[]) sum[name] += found[name]
    if (!found.agreed) disagreed += 1
    countdownOffMs = Math.max(countdownOffMs, found.countdownOffMs)
    console.error(`${made + some} kills: ${JSON.stringify(sum)}`)
  }
  const figure = (name: string) => `${kills} kills, seed ${seed}: ${name}`
  const row = (name: string, value: number, unit: string) => ({ figure: figure(name), value, unit })
  return [
    atLeast(3 * kills, row('acknowledged', sum.acknowledged, 'entries')),
    ...noneOf(sum, figure),
    exactly(kills, row('incidents in the fold', sum.incidents, 'incidents')),
    exactly(0, row('races in which screens disagree', disagreed, 'races')),
    atMost(COUNTDOWN_OFF_MS, row('countdowns off by, worst', countdownOffMs, 'ms')),
  ]
}

interface Missing {
  readonly lost: number
  readonly twice: number
  readonly gaps: number
  readonly unsent: number
}

function noneOf(found: Missing, figure: (name: string) => string): readonly Row[] {
  return [
    exactly(0, { figure: figure('lost'), value: found.lost, unit: 'entries' }),
    exactly(0, { figure: figure('doubled'), value: found.twice, unit: 'entries' }),
    exactly(0, { figure: figure('gaps in the log’s numbers'), value: found.gaps, unit: 'gaps' }),
    exactly(0, { figure: figure('made and not saved'), value: found.unsent, unit: 'entries' }),
  ]
}
