/** A planned night over the end of summer time, for tests: names and a place that a calendar file has to escape. */
import { CAPTAINS_DEFAULTS, type Crew, type Plan, type Regulations } from '@pitlamp/race'
import type { Answered, BenchDevice } from '../app-bench.ts'

export const HOUR = 3_600_000
/** Saturday, 22:00 in Berlin, two hours ahead of UTC until 01:00 UTC. */
export const GREEN = Date.UTC(2030, 9, 26, 20)

export const PEOPLE = {
  solvi: '019b0000-0002-7000-8000-000000000001',
  okello: '019b0000-0002-7000-8000-000000000002',
  tamsin: '019b0000-0002-7000-8000-000000000003',
} as const
export const SOLVI = 'Sölvi Nordlicht, die Ältere; Kapitänin für die große Nacht'
export const PLACE = 'Halle 3; Nordstraße 12, Hinterhof \\ links'

/** 20:00 to 24:00 UTC, half an hour's break, 00:30 to 04:30 UTC. */
const RULES: Regulations = {
  name: 'Two times four hours',
  place: PLACE,
  timeZone: 'Europe/Berlin',
  programme: [
    { ...segment('one'), plannedAt: GREEN },
    { id: 'rest', kind: 'break', lengthMs: 0.5 * HOUR },
    { ...segment('two'), name: 'Dämmerung, die zweite' },
  ],
  rules: [],
}

const CREW: Crew = {
  people: [
    { id: PEOPLE.solvi, name: SOLVI, duties: [] },
    { id: PEOPLE.okello, name: 'Okello', duties: [] },
    { id: PEOPLE.tamsin, name: 'Tamsin', duties: [] },
  ],
}

export const PLAN: Plan = {
  spans: [
    span('d1', { person: PEOPLE.solvi, duty: 'controller', fromMs: 0, toMs: 2.5 * HOUR, lane: 4 }),
    span('d2', { person: PEOPLE.okello, duty: 'controller', fromMs: 2.5 * HOUR, toMs: 4 * HOUR }),
    span('m1', { person: PEOPLE.okello, duty: 'post', fromMs: 0, toMs: 2 * HOUR, post: '3' }),
    span('w1', { person: PEOPLE.tamsin, duty: 'wall', fromMs: 0, toMs: 2 * HOUR }),
    span('b1', { person: PEOPLE.tamsin, duty: 'bench', fromMs: 2 * HOUR, toMs: 4 * HOUR }),
    {
      ...span('d3', { person: PEOPLE.solvi, duty: 'controller', fromMs: 0, toMs: HOUR }),
      segment: 'two',
    },
    {
      ...span('o1', { person: PEOPLE.tamsin, duty: 'offDuty', fromMs: 0, toMs: 4 * HOUR }),
      segment: 'two',
    },
  ],
  stops: [{ id: 'p1', segment: 'one', atMs: 2.5 * HOUR, mandatory: true, task: 'tyres' }],
  captain: CAPTAINS_DEFAULTS,
}

export interface PlannedMeeting {
  readonly device: BenchDevice
  readonly meeting: string
}

/** Saves rules, crew and plan as first drafts. */
export async function draftPlan({ device, meeting }: PlannedMeeting): Promise<void> {
  const drafts = { rules: RULES, crew: CREW, plan: PLAN }
  for (const [document, content] of Object.entries(drafts)) {
    await saveDraft({ device, meeting }, { document, basedOn: 0, content })
  }
}

export interface DraftToSave {
  readonly document: string
  readonly basedOn: number
  readonly content: unknown
}

export function saveDraft(
  { device, meeting }: PlannedMeeting,
  { document, basedOn, content }: DraftToSave,
): Promise<Answered> {
  const path = `/api/meetings/${meeting}/documents/${document}`
  return device.ask(`PUT ${path}`, { body: { basedOn, content } })
}

/** Adopts a plan for what comes from `at` (meeting time) on. */
export async function adoptPlan(
  { device, meeting }: PlannedMeeting,
  { content, at }: { readonly content: Plan; readonly at: number },
): Promise<void> {
  const adopted = { document: 'plan', version: 1, sha256: 'a'.repeat(64), content, as: 'change' }
  const body = JSON.stringify({ ...adopted, appliesFrom: at })
  const entries = [device.entry({ at, kind: 'adopted.1', body })]
  await device.ask(`POST /api/meetings/${meeting}/entries`, { body: { meeting, entries } })
}

function segment(id: string) {
  return { id, kind: 'segment', length: { by: 'time', lengthMs: 4 * HOUR } } as const
}

function span(
  id: string,
  rest: Omit<Plan['spans'][number], 'id' | 'segment'>,
): Plan['spans'][number] {
  return { id, segment: 'one', ...rest }
}
