/** A classification being typed: a row a team, laps and section digit by digit. Places follow from them. */
import type { Body, ClassifiedLine } from '@pitlamp/race'
import { countOf, countPush } from '../../parts/pad-number.ts'

export interface Row {
  readonly id: string
  readonly entrant: string
  readonly ours: boolean
  /** Digits as typed. */
  readonly laps: string
  readonly section: string
  /** As it was pasted; what is typed is placed by its distance. */
  readonly place?: number
}
export type Field = 'laps' | 'section'

export interface Cell {
  readonly row: string
  readonly field: Field
}

const MOST_ROWS = 60
const LONGEST_NAME = 80

/** Teams named before, ours first where nobody was. Their distances are empty. */
export function emptyRows(named: readonly ClassifiedLine[], us: string): readonly Row[] {
  const lines = named.length > 0 ? named : [{ entrant: us, ours: true }]
  return lines.map(({ entrant, ours = false }, index) => {
    return { id: String(index), entrant, ours, laps: '', section: '' }
  })
}

/** Ours among pasted lines is who was ours before, capitals aside. */
export function pastedRows(lines: readonly ClassifiedLine[], us: string): readonly Row[] {
  return lines.map(({ entrant, laps, section, place }, index) => ({
    ...{ id: String(index), entrant, place, laps: String(laps) },
    ours: entrant.trim().toLowerCase() === us.trim().toLowerCase(),
    section: section === undefined ? '' : String(section),
  }))
}

export function withTeam(rows: readonly Row[], name: string): readonly Row[] {
  const entrant = name.trim().slice(0, LONGEST_NAME)
  if (entrant === '' || rows.length >= MOST_ROWS) return rows
  const next = rows.reduce((most, { id }) => Math.max(most, Number(id)), -1) + 1
  return [...rows, { id: String(next), entrant, ours: false, laps: '', section: '' }]
}

export function withoutTeam(rows: readonly Row[], row: string): readonly Row[] {
  return rows.filter(({ id }) => id !== row)
}

/** One row is ours. */
export function withOurs(rows: readonly Row[], row: string): readonly Row[] {
  return rows.map((one) => ({ ...one, ours: one.id === row }))
}

export function withDigit(rows: readonly Row[], cell: Cell, digit: string): readonly Row[] {
  return changed(rows, cell, (digits) => countPush(digits, digit))
}

export function withoutDigit(rows: readonly Row[], cell: Cell): readonly Row[] {
  return changed(rows, cell, (digits) => digits.slice(0, -1))
}

/** What is typed is no longer as it was pasted: places follow anew. */
function changed(
  rows: readonly Row[],
  { row, field }: Cell,
  change: (digits: string) => string,
): readonly Row[] {
  return rows.map(({ place: _, ...one }) =>
    one.id === row ? { ...one, [field]: change(one[field]) } : one,
  )
}

/** Where the thumb goes next: the section where one is asked, then the next team's laps. */
export function nextCell(rows: readonly Row[], { row, field }: Cell, sections: boolean): Cell {
  if (field === 'laps' && sections) return { row, field: 'section' }
  const index = rows.findIndex(({ id }) => id === row)
  return { row: rows[index + 1]?.id ?? rows[0]?.id ?? row, field: 'laps' }
}

/** Rows without laps are left out; undefined while there is none or nobody is ours. Equal distances share a place. */
export function linesOf(rows: readonly Row[]): Body<'classification.1'>['lines'] | undefined {
  const typed = rows.flatMap(({ entrant, ours, laps, section, place }) => {
    const [whole, part] = [countOf(laps), countOf(section)]
    if (whole === undefined) return []
    const line = { entrant, laps: whole, ...(part === undefined ? {} : { section: part }) }
    return [{ ...line, ...(ours ? { ours } : {}), ...(place === undefined ? {} : { place }) }]
  })
  if (!typed.some(({ ours }) => ours)) return undefined
  const further = (a: (typeof typed)[number], b: (typeof typed)[number]) =>
    b.laps - a.laps || (b.section ?? 0) - (a.section ?? 0)
  const placed = typed.map((line) => ({
    ...line,
    place: line.place ?? 1 + typed.filter((other) => further(line, other) > 0).length,
  }))
  return placed.sort((a, b) => a.place - b.place)
}
