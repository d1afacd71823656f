/**
 * A rotation worked out again in the race, from the log alone.
 *
 * R1  What was driven counts, whoever the plan had there: over a file and over a database.
 */
import { meetingTime, workLineSchema, type Meeting, type WorkLine } from '@pitlamp/contract'
import type { Plan } from '@pitlamp/race'
import { createHash } from 'node:crypto'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { openBench, type AppBench, type BenchDevice } from '../app-bench.ts'
import { startPostgres, type TestingPostgres } from '../storage/postgres/testing-postgres.ts'
import { meantOf, MINUTE, personId, PLAIN } from '../work/testing/meant.ts'

let postgres: TestingPostgres
let bench: AppBench
beforeAll(async () => {
  postgres = await startPostgres()
}, 120_000)
afterEach(() => bench.close())
afterAll(() => postgres.stop())

const [ANA, BEN, CEM] = [personId(0), personId(1), personId(2)]
const PACE_MS = 9_000
/** An hour, twenty minutes each: planned are Ana, Ben and Cem. */
const { drafts } = meantOf({
  segments: [60],
  people: ['Ana', 'Ben', 'Cem'].map((name) => ({ name, paceMs: PACE_MS })),
  rules: [{ id: 'most', kind: 'drivingTime', value: { atMostMs: 20 * MINUTE } }],
  stops: [
    [1, 20],
    [1, 40],
  ],
  spans: [ANA, BEN, CEM].map((person, place) => ({
    ...{ id: `d${place}`, person, duty: 'controller', segment: 's1' },
    ...{ fromMs: place * 20 * MINUTE, toMs: (place + 1) * 20 * MINUTE },
  })),
})

test.each(['file', 'database'] as const)('R1 what was driven counts, over a %s', async (store) => {
  bench = await openBench(store === 'file' ? {} : { database: await postgres.database() })
  const captain = await bench.device('captain')
  const meeting = await raceOf(captain)
  const body = { ...PLAIN, from: 'inForce', want: 'again' }
  const answer = await captain.ask(`POST /api/meetings/${meeting}/work`, { body })
  const lines = String(answer.body).trim().split('\n')
  const ways = lines
    .map((line): WorkLine => workLineSchema.parse(JSON.parse(line)))
    .flatMap((line) => (line.kind === 'worked' ? [[line.as, ahead(line.plan)] as const] : []))
  expect(ways.map(([as]) => as)).toEqual(['fewestChanges', 'mostLaps'])
  // Ben has driven ten of his twenty minutes where the plan had Ana: he goes on to the first stop.
  for (const [, [first, ...others]] of ways) {
    expect(first).toBe(BEN)
    expect([...others].sort()).toEqual([ANA, CEM])
  }
})

/** Who drives from now to the first stop, to the second, and to the end. */
function ahead({ spans }: Plan): readonly string[] {
  return [20, 40, 60].flatMap((minute) =>
    spans
      .filter(({ duty, toMs }) => duty === 'controller' && toMs === minute * MINUTE)
      .map(({ person }) => person),
  )
}

/** Everything adopted, Ben at the controller, green ten minutes ago. */
async function raceOf(captain: BenchDevice): Promise<string> {
  const id = await captain.meeting()
  const listed = await captain.ask('GET /api/meetings')
  const [meeting] = (listed.body as { readonly meetings: readonly [Meeting] }).meetings
  const now = meetingTime(meeting.clock, bench.house.deps.time.now())
  const press = async (kind: string, said: unknown, at: number) => {
    const entry = captain.entry({ kind, body: JSON.stringify(said), at, atBoundMs: 0 })
    const sent = { body: { meeting: id, entries: [entry] } }
    const { body } = await captain.ask(`POST /api/meetings/${id}/entries`, sent)
    expect(body).toMatchObject({ results: [{ outcome: 'recorded' }] })
  }
  for (const [document, content] of Object.entries(drafts)) {
    const draft = { body: { basedOn: 0, content } }
    await captain.ask(`PUT /api/meetings/${id}/documents/${document}`, draft)
    const sha256 = createHash('sha256').update(JSON.stringify(content)).digest('hex')
    const adopted = { document, version: 1, sha256, content, appliesFrom: 0, as: 'correction' }
    await press('adopted.1', adopted, now - 20 * MINUTE)
  }
  const moves = [{ person: BEN, duty: 'controller' }]
  await press('handover.1', { moves }, now - 11 * MINUTE)
  await press('green.1', { segment: 's1' }, now - 10 * MINUTE)
  return id
}
