/** Copies that several screens wrote become one a meeting. In which order they are given, and how often, is all the same. */
import { writeCopy, type MeetingCopy } from '@pitlamp/contract'
import { firstBy, newestDrafts, newestNames } from './laid-down.ts'
import { mergeLogs, type Clash } from './merge-logs.ts'

export interface Merged {
  readonly copy: MeetingCopy
  readonly clashes: readonly Clash[]
}

/** By the meeting's id. */
export function mergeCopies(copies: readonly MeetingCopy[]): readonly Merged[] {
  const meetings = [...new Set(copies.map(({ meeting }) => meeting.id))].sort()
  return meetings.map((id) => merge(copies.filter(({ meeting }) => meeting.id === id)))
}

function merge(copies: readonly MeetingCopy[]): Merged {
  const latestFirst = firstBy(copies, latestOf(copies))
  const [newest] = latestFirst
  if (!newest) throw new Error('There is a copy of every meeting that was named.')
  const { clashes, ...log } = mergeLogs(latestFirst)
  const lastSeq = Math.max(...copies.map(({ meeting }) => meeting.lastSeq))
  return {
    copy: {
      ...newest,
      meeting: { ...newest.meeting, lastSeq },
      devices: newestNames(latestFirst.map(({ devices }) => devices)),
      people: newestNames(latestFirst.map(({ people }) => people)),
      drafts: newestDrafts(latestFirst.flatMap(({ drafts }) => drafts)),
      ...log,
    },
    clashes,
  }
}

/** What was written last counts first. Of two that one device wrote at one moment their text decides, whatever it is. */
function latestOf(copies: readonly MeetingCopy[]) {
  const moment = ({ asOf, writtenAt, device }: MeetingCopy) => [-asOf, -writtenAt, device.id]
  const moments = copies.map((copy) => moment(copy).join())
  return (copy: MeetingCopy) => {
    const isTied = moments.filter((one) => one === moment(copy).join()).length > 1
    return isTied ? [...moment(copy), writeCopy(copy)] : moment(copy)
  }
}
