/**
 * Entries of a copy, before anything is changed. What a server had recorded is in a log already and is only asked
 * whether it can be stored; what a device never sent is judged as if it were sent now, by the meeting's clock.
 */
import { meetingTime, type BroughtIn, type MeetingCopy } from '@pitlamp/contract'
import { timeMs } from '@pitlamp/race'
import { faultIn, faultOfBody } from '../sync/entry-faults.ts'

type Left = BroughtIn['left'][number]
export type Checked =
  { readonly copy: MeetingCopy; readonly left: readonly Left[] } | { readonly wrong: string }

export function checked(copy: MeetingCopy, nowMs: number): Checked {
  const { clock } = copy.meeting
  const { success } = timeMs.safeParse(meetingTime(clock, nowMs))
  if (!success) return { wrong: 'meeting.clock: now is no time of the meeting' }
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
