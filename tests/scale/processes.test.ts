/**
 * Two processes over one database, run short: `npm run fault -- --processes` is the long form.
 *
 * Z1  Any process may be killed: its devices are served by another within 3 s, nothing is lost, nothing twice.
 * Z2  Processes are replaced one by one by another version with no failed press.
 */
import { describe, expect, it } from 'vitest'
import type { Row } from '../bench/row.ts'
import { SHORT } from '../long/shapes.ts'
import { killProcesses } from './kills.ts'
import { rollOver } from './rolling.ts'

/** Seven starts of a server, and PostgreSQL's, on a machine that does other things too. */
const WITHIN_MS = 240_000

/** Counts, and not what a busy machine makes longer: of the times the middle one is enough here. */
const missedIn = (rows: readonly Row[]) => rows.filter(({ unit, met }) => !met && unit !== 'ms')
const valueOf = (rows: readonly Row[], name: string) =>
  rows.find(({ figure }) => figure.startsWith(name))?.value

describe('two processes', () => {
  it('Z1: one is killed', { timeout: WITHIN_MS }, async () => {
    const rows = await killProcesses(SHORT.processes)
    expect(missedIn(rows)).toEqual([])
    expect(valueOf(rows, 'lost')).toBe(0)
    expect(valueOf(rows, 'doubled')).toBe(0)
    expect(valueOf(rows, 'served by another, median')).toBeLessThanOrEqual(3_000)
  })

  it('Z2: both are replaced', { timeout: WITHIN_MS }, async () => {
    const rows = await rollOver(SHORT.processes)
    expect(missedIn(rows)).toEqual([])
    expect(valueOf(rows, 'set aside')).toBe(0)
    expect(valueOf(rows, 'served by another, median')).toBeLessThanOrEqual(3_000)
  })
})
