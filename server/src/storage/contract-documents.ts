/** The contract's part about meetings, drafts and people. */
import { expect } from 'vitest'
import { anId, joined, meetingOf, type Cases } from './contract-bench.ts'

export const DOCUMENT_CASES: Cases = {
  'S50 a meeting asked for twice is made once': async (bench) => {
    const { team } = await joined(bench, { role: 'captain' })
    const meeting = { id: anId(), name: 'The long night' }
    const first = await bench.storage.run('createMeeting', { team, meeting, nowMs: 7 })
    const again = { ...meeting, name: 'Another name' }
    expect(await bench.storage.run('createMeeting', { team, meeting: again, nowMs: 8 })).toEqual(
      first,
    )
    expect(await bench.storage.read.meetings(team)).toEqual([
      {
        ...meeting,
        fictional: false,
        clock: { anchorServerMs: 7, anchorMeetingMs: 7, rate: 1 },
        createdAt: 7,
        lastSeq: 0,
      },
    ])
  },

  'S51 a draft rises by versions, and a stale save changes nothing and brings back the last':
    async (bench) => {
      const { team, id: device } = await joined(bench, { role: 'captain' })
      const meeting = await meetingOf(bench, team)
      const save = (basedOn: number, content: unknown) =>
        bench.storage.run('saveDraft', {
          ...{ team, meeting, device, document: 'rules', nowMs: 30 },
          save: { basedOn, content },
        })
      expect(await bench.storage.read.draft(meeting, 'rules')).toEqual({
        document: 'rules',
        version: 0,
      })
      const first = { document: 'rules', version: 1, content: { a: 1 }, savedAt: 30 }
      expect(await save(0, { a: 1 })).toEqual({ draft: first })
      expect(await save(0, { b: 2 })).toEqual({ stale: first })
      expect(await save(1, { b: 2 })).toMatchObject({ draft: { version: 2 } })
      expect(await bench.storage.read.draft(meeting, 'rules')).toMatchObject({ content: { b: 2 } })
    },

  'S52 of two saves of one version at once, one is stale': async (bench) => {
    const { team, id: device } = await joined(bench, { role: 'captain' })
    const meeting = await meetingOf(bench, team)
    const save = (content: unknown) =>
      bench.storage.run('saveDraft', {
        ...{ team, meeting, device, document: 'plan', nowMs: 0 },
        save: { basedOn: 0, content },
      })
    const both = await Promise.all([save('one'), save('other')])
    expect(both.map((answer) => Object.keys(answer)[0])).toEqual(['draft', 'stale'])
  },

  'S53 a person saved again under another name is renamed': async (bench) => {
    const { team } = await joined(bench, { role: 'captain' })
    const id = anId()
    await bench.storage.run('savePerson', { team, person: { id, name: 'Jo' } })
    await bench.storage.run('savePerson', { team, person: { id, name: 'Joanna' } })
    expect(await bench.storage.read.people(team)).toEqual([{ id, name: 'Joanna' }])
  },
}
