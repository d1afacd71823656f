/** The contract's part about meetings that come out of a screen's copy. */
import type { Meeting } from '@pitlamp/contract'
import { expect } from 'vitest'
import { anEntry, anId, joined, NOW_MS, type Cases, type JoinedDevice } from './contract-bench.ts'
import type { Inputs } from './commands/index.ts'
import type { News } from './port.ts'

export const COPY_CASES: Cases = {
  'S90 a copy makes the meeting as it was, once, and is told as news': async (bench) => {
    const captain = await joined(bench, { role: 'captain' })
    const told: News[] = []
    bench.storage.onNews((news) => told.push(news))
    const input = aCopy(captain)
    const { meeting, copy } = input
    const brought = await bench.storage.run('bringIn', input)
    const [first, second] = [copy.recorded[0], copy.unsent[0]?.entry]
    // The clock stands at the server's 1,000,000 where the meeting's does.
    const log = [first, { ...second, seq: 2, recordedAt: NOW_MS, role: 'crew' }]
    expect(brought).toMatchObject({ broughtIn: { recorded: 1, unsent: 1, already: 0, left: [] } })
    expect(await bench.storage.read.entriesAfter(meeting, 0)).toEqual(log)
    expect(await bench.storage.read.meeting(captain.team, meeting)).toEqual({
      ...copy.meeting,
      lastSeq: 2,
    })
    expect(told).toEqual([{ meeting, from: 0, to: 2, entries: log }])
    const again = await bench.storage.run('bringIn', input)
    expect(again).toMatchObject({ broughtIn: { recorded: 0, unsent: 0, already: 2, left: [] } })
    expect(await bench.storage.read.entriesAfter(meeting, 0)).toEqual(log)
    expect(told).toHaveLength(1)
    expect(await bench.storage.read.people(captain.team)).toEqual(input.people)
    expect(await bench.storage.read.draft(meeting, 'rules')).toMatchObject({ version: 3 })
  },

  'S91 a copy of another team’s meeting changes nothing': async (bench) => {
    const captain = await joined(bench, { role: 'captain' })
    const input = aCopy(captain)
    await bench.storage.run('bringIn', input)
    const stranger = { ...aCopy(captain), team: anId(), meeting: input.meeting }
    const copy = { ...stranger.copy, meeting: input.copy.meeting }
    expect(await bench.storage.run('bringIn', { ...stranger, copy })).toEqual({
      refused: 'otherMeeting',
    })
    expect(await bench.storage.read.entriesAfter(input.meeting, 0)).toHaveLength(2)
  },

  'S92 a draft that was saved here a moment before stays among the versions': async (bench) => {
    const captain = await joined(bench, { role: 'captain' })
    const input = aCopy(captain)
    await bench.storage.run('bringIn', { ...input, drafts: [] })
    const { meeting, team, device, nowMs } = input
    const save = { basedOn: 0, content: 'typed here' }
    await bench.storage.run('saveDraft', {
      ...{ team, meeting, device, nowMs, save },
      document: 'rules',
    })
    const drafts = input.drafts.map((draft) => ({ ...draft, savedAt: nowMs + 1 }))
    await bench.storage.run('bringIn', { ...input, drafts })
    expect(await bench.storage.read.draft(meeting, 'rules')).toMatchObject({ version: 3 })
    const kept = await bench.storage.read.draftVersions(meeting, 'rules')
    expect(kept.map(({ version }) => version)).toEqual([3, 1])
  },
}

/** One entry that a server had recorded, and one that a phone had not sent. */
function aCopy({ id, team }: JoinedDevice): Inputs['bringIn'] {
  const meeting: Meeting = {
    ...{ id: anId(), name: 'Lantern Forty', fictional: false, createdAt: 7, lastSeq: 0 },
    clock: { anchorServerMs: 5_000, anchorMeetingMs: 5_000, rate: 1 },
  }
  const [tablet, phone] = [anId(), anId()]
  const entry = anEntry({ device: tablet, n: 1 })
  const note = anEntry({ device: phone, n: 1, kind: 'note.1', body: '{"words":"a"}' })
  return {
    ...{ team, device: id, meeting: meeting.id, nowMs: NOW_MS },
    copy: {
      ...{ asOf: 999_000, meeting },
      recorded: [{ ...entry, seq: 1, recordedAt: 900_000, role: 'pitWall' }],
      unsent: [{ entry: note, role: 'crew' }],
    },
    drafts: [{ document: 'rules', version: 3, content: { any: 'thing' }, savedAt: 9 }],
    people: [{ id: anId(), name: 'Ida Quill' }],
  }
}
