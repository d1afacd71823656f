/** What a correction says. The last one holds alone, so each carries on what is still meant of the one before. */
import type { Body, LogLine } from '@pitlamp/race'

type Change = Body<'correction.1'>['change']

/** Moved to when it happened; what else was set right stays so. */
export function moved({ corrected }: LogLine, at: number): Change {
  return corrected === undefined
    ? { what: 'replace', at }
    : { what: 'replace', at, body: corrected.body }
}

/** Back to what was pressed. */
export const RESTORED: Change = { what: 'replace' }

/** A second witness that was none: something else that happened at about the same time. */
export function splitOff({ corrected, entry, at }: LogLine): Change {
  return {
    what: 'replace',
    apart: true,
    ...(at === entry.at ? {} : { at }),
    ...(corrected === undefined ? {} : { body: corrected.body }),
  }
}
