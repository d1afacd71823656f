/**
 * The long tests, run short. How fast things were and what they took of memory is for those who run them at length.
 *
 * L1  Under load every acknowledged entry is in the log once, and every device holds the same log.
 * L2  A demo at speed loses nothing, adds up, and counts down alike on two screens.
 * L3  Power cuts and kills lose nothing.
 * L4  With --json the rows are all that is on standard output.
 */
import { execFile } from 'node:child_process'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { describe, expect, it } from 'vitest'
import type { Row } from '../bench/row.ts'
import { cannotCutPower, powerCuts, serverKills } from './fault.ts'
import { atLeast, atMost, exactly, quantile } from './figures.ts'
import { load } from './load.ts'
import { SHORT } from './shapes.ts'
import { soak } from './soak.ts'

/** Counts, and not what a busy machine makes longer. */
function missedIn(rows: readonly Row[]): readonly Row[] {
  return rows.filter(({ unit, met }) => !met && !['ms', 'MB'].includes(unit))
}

const valueOf = (rows: readonly Row[], name: string) =>
  rows.find(({ figure }) => figure.includes(name))?.value

describe('the long tests, run short', () => {
  it('L1: load', async () => {
    const rows = await load(SHORT.load)
    expect(missedIn(rows)).toEqual([])
    // 20 presses a second for 5 s.
    expect(valueOf(rows, 'acknowledged')).toBe(100)
    expect(valueOf(rows, 'lost')).toBe(0)
  })

  it('L2: soak', async () => {
    const rows = await soak(SHORT.soak)
    expect(missedIn(rows)).toEqual([])
    expect(valueOf(rows, 'acknowledged')).toBeGreaterThan(0)
    expect(valueOf(rows, 'lost')).toBe(0)
    expect(valueOf(rows, 'viewers')).toBeGreaterThan(0)
    expect(valueOf(rows, 'countdowns')).toBeLessThanOrEqual(100)
  })

  it('L3: power cuts', async ({ skip }) => {
    const reason = cannotCutPower()
    if (reason !== undefined) return skip(reason)
    const rows = await powerCuts(SHORT.fault.cuts, SHORT.fault.seed)
    expect(missedIn(rows)).toEqual([])
    expect(valueOf(rows, 'lost')).toBe(0)
  })

  it('L3: kills', async () => {
    const rows = await serverKills(SHORT.fault.kills, SHORT.fault.seed)
    expect(missedIn(rows)).toEqual([])
    expect(valueOf(rows, 'lost')).toBe(0)
  })

  it('L4: the script prints rows and nothing else', async () => {
    const words = [
      'load',
      '--short',
      '--json',
      '--devices',
      '2',
      '--presses',
      '10',
      '--seconds',
      '1',
    ]
    const script = join(import.meta.dirname, 'run.ts')
    const run = promisify(execFile)
    const { stdout } = await run(process.execPath, ['--import', 'tsx', script, ...words])
    const [first, ...rest] = JSON.parse(stdout) as Row[]
    expect(first).toEqual({
      ...{ figure: 'acknowledged (2 devices, 10 presses/s, 1 s)', value: 10, unit: 'entries' },
      ...{ baseline: null, ratio: null, goal: '10', met: true },
    })
    expect(rest.map(({ figure }) => figure.split(' (')[0])).toEqual([
      ...['lost', 'doubled', 'gaps in the log’s numbers'],
      ...['devices with another log than the server', 'presses seen'],
      ...['press to every screen, p50', 'press to every screen, p99'],
    ])
  })

  it('a goal that is missed is told so', () => {
    const of = (value: number) => ({ figure: 'lost', value, unit: 'entries' })
    const met = (row: Row) => row.met
    expect([exactly(0, of(0)), exactly(0, of(1))].map(met)).toEqual([true, false])
    expect([atLeast(5, of(5)), atLeast(5, of(4))].map(met)).toEqual([true, false])
    expect([atMost(5, of(5)), atMost(5, of(6)), atMost(5, of(NaN))].map(met)).toEqual([
      ...[true, false, false],
    ])
    // Nearest rank: of ten values, the fifth is the median and the tenth the 99th percentile.
    const ten = [10, 9, 8, 7, 6, 5, 4, 3, 2, 1]
    expect([quantile(ten, 0.5), quantile(ten, 0.99), quantile([], 0.5)]).toEqual([5, 10, NaN])
  })
})
