import type { Body } from '../entry/kinds/index.ts'
import type { Pressing } from './pressing.ts'

/** `Wren 412.35`; *Us* is us. Places are those of the rows. */
function linesOf(rows: readonly string[]): Body<'classification.1'>['lines'] {
  return rows.map((row, index) => {
    const [entrant = '', distance = ''] = row.split(' ')
    const [laps, section] = distance.split('.').map(Number)
    const line = { place: index + 1, entrant, laps: laps ?? 0 }
    const far = section === undefined ? line : { ...line, section }
    return entrant === 'Us' ? { ...far, ours: true } : far
  })
}

export interface Classified {
  readonly rows: readonly string[]
  readonly segment?: string
  readonly scope?: 'segment' | 'stage' | 'whole'
}

/** What every team came to in one segment, a stage, or all of it. */
export function classify(pressing: Pressing, at: number, of: Classified): string {
  const { segment, scope = 'segment' } = of
  const lines = linesOf(of.rows)
  return pressing.press(at, 'classification.1', {
    ...{ standing: 'official', scope, lines },
    ...(segment === undefined ? {} : { segment }),
  })
}
