/** The contract's part about meetings, drafts and their versions, links to the plan, and people. */
import { expect } from 'vitest'
import { anId, joined, meetingOf, type Bench, type Cases } from './contract-bench.ts'

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

  'S54 the newest version of a draft is kept, and those before a pause or another device’s save':
    async (bench) => {
      const meeting = await drafted(bench)
      await meeting.save({ nowMs: 0 })
      await meeting.save({ nowMs: 59_999 })
      expect(await meeting.kept()).toEqual([2])
      // A minute after version 2: that one stays. Then the other device: 3 stays, and 4 before the first one again.
      await meeting.save({ nowMs: 119_999 })
      await meeting.save({ nowMs: 120_000, by: 'other' })
      await meeting.save({ nowMs: 120_001 })
      expect(await meeting.kept()).toEqual([5, 4, 3, 2])
      // Other documents have versions of their own.
      expect(await bench.storage.read.draftVersions(meeting.id, 'crew')).toEqual([])
    },

  'S55 of saving without a pause one version every ten minutes is kept': async (bench) => {
    const meeting = await drafted(bench)
    // Every half minute until 10:30: versions 1 to 20 within ten minutes of the first, 21 at 10:00, 22 at 10:30.
    for (let nowMs = 0; nowMs <= 630_000; nowMs += 30_000) await meeting.save({ nowMs })
    expect(await meeting.kept()).toEqual([22, 20])
  },

  'S56 after the captain has set the clock back nothing is replaced': async (bench) => {
    const meeting = await drafted(bench)
    await meeting.save({ nowMs: 500_000 })
    await meeting.save({ nowMs: 499_999 })
    expect(await meeting.kept()).toEqual([2, 1])
  },

  'S57 a stale save keeps no version, and a version that was not kept is none': async (bench) => {
    const meeting = await drafted(bench)
    await meeting.save({ nowMs: 10 })
    await meeting.save({ nowMs: 20, by: 'other' })
    await bench.storage.run('saveDraft', { ...meeting.input, nowMs: 30, save: STALE })
    expect(await bench.storage.read.draftVersions(meeting.id, 'plan')).toEqual([
      { version: 2, savedAt: 20, savedBy: 'The other device' },
      { version: 1, savedAt: 10, savedBy: 'A device' },
    ])
    const version = (number: number) =>
      bench.storage.read.draftVersion(meeting.id, { document: 'plan', version: number })
    const first = { document: 'plan', version: 1, content: { saved: 1 }, savedAt: 10 }
    expect(await version(1)).toEqual(first)
    expect(await version(3)).toBeUndefined()
  },

  'S58 two hundred versions are listed, the newest first': async (bench) => {
    const meeting = await drafted(bench)
    for (let minute = 0; minute < 201; minute += 1) await meeting.save({ nowMs: minute * 60_000 })
    const kept = await meeting.kept()
    expect([kept.length, kept[0], kept.at(-1)]).toEqual([200, 201, 2])
  },

  'S60 a link opens the plan of its meeting until all are revoked, whatever was made before or after':
    async (bench) => {
      const { team } = await joined(bench, { role: 'captain' })
      const [one, two] = [await meetingOf(bench, team), await meetingOf(bench, team)]
      const [first, second, others] = [anId(), anId(), anId()]
      const make = (meeting: string, codeHash: string) =>
        bench.storage.run('makePlanLink', { team, meeting, codeHash, nowMs: 5 })
      await make(one, first)
      await make(one, second)
      await make(two, others)
      const behind = (codeHash: string) => bench.storage.read.planBehind(codeHash)
      expect(await behind(first)).toEqual({ team, meeting: one })
      expect(await behind(second)).toEqual({ team, meeting: one })
      expect(await behind(anId())).toBeUndefined()
      const revoke = { team, meeting: one, nowMs: 6 }
      expect(await bench.storage.run('revokePlanLinks', revoke)).toEqual({ revoked: 2 })
      expect(await bench.storage.run('revokePlanLinks', revoke)).toEqual({ revoked: 0 })
      expect([await behind(first), await behind(second)]).toEqual([undefined, undefined])
      expect(await behind(others)).toEqual({ team, meeting: two })
    },

  'S61 nobody makes or revokes a link to another team’s plan': async (bench) => {
    const { team } = await joined(bench, { role: 'captain' })
    const meeting = await meetingOf(bench, team)
    await bench.storage.run('makePlanLink', { team, meeting, codeHash: 'ours', nowMs: 0 })
    const input = { team: anId(), meeting, nowMs: 1 }
    const refused = { refused: 'otherMeeting' }
    const made = await bench.storage.run('makePlanLink', { ...input, codeHash: 'theirs' })
    expect(made).toEqual(refused)
    expect(await bench.storage.run('revokePlanLinks', input)).toEqual(refused)
    expect(await bench.storage.read.planBehind('theirs')).toBeUndefined()
    expect(await bench.storage.read.planBehind('ours')).toEqual({ team, meeting })
  },
}

const STALE = { basedOn: 0, content: 'stale' }

/** A meeting whose plan two devices save, each time from the version before; version 1 says `{ saved: 1 }`. */
async function drafted(bench: Bench) {
  const { team, id: device } = await joined(bench, { role: 'captain' })
  const { id: other } = await joined(bench, { role: 'captain' })
  const change = { name: 'The other device' }
  await bench.storage.run('changeDevice', { team, device: other, change, nowMs: 0 })
  const id = await meetingOf(bench, team)
  const input = { team, meeting: id, device, document: 'plan' } as const
  let version = 0
  return {
    id,
    input,
    async save({ nowMs, by }: { readonly nowMs: number; readonly by?: 'other' }) {
      const save = { basedOn: version, content: { saved: ++version } }
      const from = by === 'other' ? other : device
      await bench.storage.run('saveDraft', { ...input, device: from, nowMs, save })
    },
    async kept() {
      const versions = await bench.storage.read.draftVersions(id, 'plan')
      return versions.map((kept) => kept.version)
    },
  }
}
