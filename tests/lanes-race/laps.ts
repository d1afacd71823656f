/**
 * What each segment brought, as race control showed it. Six of eight teams run, two sit out: the two on places four and
 * eight of the round 1 3 5 – 6 4 2 –.
 */
import type { Body } from '@pitlamp/race'

const OURS = 'Cobalt Quay'

/** The fourth was stopped after 500 s and run again; the eighth was ten minutes long. */
export const BROUGHT = {
  s1: 'Cobalt Quay 141.20, Hop Yard 140.45, Salt Mill 139.10, Glass Works 136.30, Tallow Street 121.00, Weir House 119.05',
  s2: 'Hop Yard 140.40, Cobalt Quay 140.35, Kiln Lane 138.15, Rook Hill 135.00, Tallow Street 120.25, Weir House 118.40',
  s3: 'Salt Mill 140.05, Kiln Lane 139.30, Glass Works 137.20, Rook Hill 134.45, Tallow Street 121.10, Weir House 119.00',
  s4stopped:
    'Hop Yard 58.30, Cobalt Quay 58.10, Kiln Lane 57.40, Salt Mill 57.00, Glass Works 55.05, Rook Hill 54.25',
  s4: 'Cobalt Quay 142.15, Salt Mill 140.20, Hop Yard 139.45, Kiln Lane 138.00, Glass Works 137.10, Rook Hill 135.35',
  s5: 'Hop Yard 141.30, Cobalt Quay 140.40, Salt Mill 138.45, Glass Works 136.00, Tallow Street 120.30, Weir House 120.05',
  s6: 'Cobalt Quay 139.45, Hop Yard 139.20, Kiln Lane 137.10, Rook Hill 134.30, Tallow Street 119.45, Weir House 118.15',
  s7: 'Salt Mill 139.40, Kiln Lane 138.35, Glass Works 136.15, Rook Hill 135.20, Tallow Street 120.40, Weir House 119.25',
  s8: 'Cobalt Quay 70.30, Salt Mill 69.45, Kiln Lane 69.20, Glass Works 68.10, Hop Yard 68.05, Rook Hill 67.40',
} as const

export function linesOf(brought: string): Body<'classification.1'>['lines'] {
  return brought.split(', ').map((row, index) => {
    const [, entrant = '', laps = '', section = ''] = /^(.+) (\d+)\.(\d+)$/.exec(row) ?? []
    const line = { place: index + 1, entrant, laps: Number(laps), section: Number(section) }
    return entrant === OURS ? { ...line, ours: true } : line
  })
}
