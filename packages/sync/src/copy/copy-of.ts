/** This meeting as this screen has it, for a file. */
import { COPY_VERSION, type MeetingCopy, type Unsent } from '@pitlamp/contract'
import type { RecordedEntry } from '@pitlamp/race'
import type { Pending, SetAside, SyncState } from '../log/state.ts'
import { isRefused } from '../log/view.ts'

/** What the copy says besides the log. */
export type About = Omit<MeetingCopy, 'pitlampCopy' | 'recorded' | 'unsent'>

/** Everything that is in view here, and what the server refused. */
export function copyOf(state: SyncState, about: About): MeetingCopy {
  const { confirmed, pending, setAside, heardOf } = state
  const { meeting, device } = about
  const waiting = pending.flatMap((one): Unsent[] =>
    one.recorded ? [] : [{ entry: one.entry, role: device.role }],
  )
  return {
    pitlampCopy: COPY_VERSION,
    ...about,
    meeting: { ...meeting, lastSeq: Math.max(meeting.lastSeq, heardOf) },
    recorded: [...confirmed, ...answeredFor(pending)],
    unsent: [...waiting, ...setAside.map((aside) => unsentOf(aside, device))],
  }
}

/** Saved, though their place in the log has not arrived here yet. */
function answeredFor(pending: readonly Pending[]): readonly RecordedEntry[] {
  return pending
    .flatMap(({ recorded }) => (recorded ? [recorded] : []))
    .sort((a, b) => a.seq - b.seq)
}

function unsentOf(aside: SetAside, { id, role }: About['device']): Unsent {
  return {
    entry: aside.entry,
    ...(aside.entry.device === id && { role }),
    ...(isRefused(aside) && { refused: aside.why }),
  }
}
