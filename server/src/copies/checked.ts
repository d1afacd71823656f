/**
 * Entries of a copy, before anything is changed. What a server had recorded is in a log already and is only asked
 * whether it can be stored; what a device never sent is judged as if it were sent now.
 */
import type { BroughtIn, MeetingCopy } from '@pitlamp/contract'
import { faultIn, faultOfBody } from '../sync/entry-faults.ts'

type Left = BroughtIn['left'][number]
export type Checked =
  { readonly copy: MeetingCopy; readonly left: readonly Left[] } | { readonly wrong: string }

export function checked(copy: MeetingCopy): Checked {
  for (const [place, entry] of copy.recorded.entries()) {
    const fault = faultOfBody(entry)
    if (fault) return { wrong: `recorded.${String(place)}.body: ${fault.refusal}` }
  }
  const left: Left[] = []
  const unsent = copy.unsent.filter(({ entry, refused }) => {
    const fault = refused ? { refusal: refused } : faultIn(entry)
    if (fault) left.push({ entry: entry.id, ...fault })
    return fault === undefined
  })
  return { copy: { ...copy, unsent }, left }
}
