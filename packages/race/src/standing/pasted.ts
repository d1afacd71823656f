/** A classification pasted from the organiser's page or sheet: one row an entrant. */
import type { ClassifiedLine } from './segment-results.ts'

export interface Pasted {
  readonly lines: readonly ClassifiedLine[]
  /** Rows that say something and could not be read, as they were pasted. */
  readonly unread: readonly string[]
}

const MOST_LINES = 60
const LARGEST = 1_000_000

/**
 * Columns are set apart by tabs, semicolons, bars, or two blanks and more. The first whole number is the place, unless
 * the row has only one number, and then rows are placed as they stand; the last number is laps, with the track
 * section after a point (`412.35` is lap 412, section 35, and `412.05` section 5); what lies between is the entrant.
 * Sections are two whole numbers: `412.5` is section 5, not half a lap. Rows without any number are headings.
 */
export function pastedLines(text: string): Pasted {
  const lines: ClassifiedLine[] = []
  const unread: string[] = []
  for (const row of text.split(/\r?\n/)) {
    if (!/\d/.test(row)) continue
    const line = lineOf(row, lines.length + 1)
    if (line && lines.length < MOST_LINES) lines.push(line)
    else unread.push(row.trim())
  }
  return { lines, unread }
}

function lineOf(row: string, standsAt: number): ClassifiedLine | undefined {
  const cells = row
    .split(/\t|;|\||\s{2,}/)
    .map((cell) => cell.trim())
    .filter((cell) => cell !== '')
  const lapsAt = cells.map((cell) => /^\d{1,7}(?:\.\d{1,4})?$/.test(cell)).lastIndexOf(true)
  if (lapsAt < 0) return undefined
  const isPlaced = lapsAt > 0 && /^\d{1,3}[.)]?$/.test(cells[0] ?? '')
  const place = isPlaced ? Number((cells[0] ?? '').replace(/[.)]$/, '')) : standsAt
  const entrant = cells
    .slice(isPlaced ? 1 : 0, lapsAt)
    .join(' ')
    .slice(0, 80)
    .trim()
  const [laps = '', section] = (cells[lapsAt] ?? '').split('.')
  if (entrant === '' || Number(laps) > LARGEST || place > LARGEST) return undefined
  const line = { place, entrant, laps: Number(laps) }
  return section === undefined ? line : { ...line, section: Number(section) }
}
