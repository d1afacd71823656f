/**
 * A fictional meeting entered over HTTP, so that a test begins where there is something to see: two
 * segments of 40 minutes with a break, two stops of 45 s each, a track call stops every clock.
 */
import { createHash } from 'node:crypto'
import {
  appendedSchema,
  clockStandingSchema,
  meetingSchema,
  meetingTime,
  type NewMeeting,
} from '@pitlamp/contract'
import {
  ENVELOPE_VERSION,
  type Body,
  type DocumentContent,
  type DocumentName,
  type Entry,
  type Kind,
  type Move,
} from '@pitlamp/race'
import { v7 as uuidV7 } from 'uuid'
import type { Device } from '../device.ts'
import { zoneWhere } from './zone.ts'

export const IDA = '018f3a50-6a00-7000-8000-00000000c001'
export const TOM = '018f3a50-6a00-7000-8000-00000000c002'
export const BEA = '018f3a50-6a00-7000-8000-00000000c003'

const MINUTE_MS = 60_000
const EVERY_DUTY = ['controller', 'post', 'wall', 'bench'] as const

const rules: DocumentContent<'rules'> = {
  name: 'Lantern Forty',
  place: 'The Old Ropeworks',
  // The race goes past midnight, where the words for a time are longest.
  timeZone: zoneWhere(23),
  programme: [
    { id: 's1', kind: 'segment', length: { by: 'time', lengthMs: 40 * MINUTE_MS } },
    { id: 'b1', kind: 'break', lengthMs: 10 * MINUTE_MS },
    { id: 's2', kind: 'segment', length: { by: 'time', lengthMs: 40 * MINUTE_MS } },
  ],
  rules: [
    { id: 'stops', kind: 'mandatoryStops', value: { count: 2, per: 'segment' } },
    {
      id: 'minimum',
      kind: 'stopMinimum',
      value: { minimumMs: 45_000, from: 'stopped', to: 'leaving' },
    },
    ...(['segment', 'stopMinimum', 'driving'] as const).map((clock) => ({
      id: `call-${clock}`,
      kind: 'clockPolicy' as const,
      value: { clock, under: 'trackCall' as const, does: 'holds' as const },
    })),
    { id: 'work-green', kind: 'workAllowed', value: { during: 'green', allowed: true } },
    { id: 'work-call', kind: 'workAllowed', value: { during: 'trackCall', allowed: false } },
  ],
}
const crew: DocumentContent<'crew'> = {
  people: [
    { id: IDA, name: 'Ida Quill', duties: [...EVERY_DUTY] },
    { id: TOM, name: 'Tom Wick', duties: [...EVERY_DUTY] },
    { id: BEA, name: 'Bea Lorne', duties: [...EVERY_DUTY] },
  ],
}
const car: DocumentContent<'car'> = {
  name: 'Wren Mark 4',
  faultTiles: [
    ...['Rear wing', 'Front splitter', 'Braid', 'Rear tyres', 'Lights', 'Motor', 'Gears'],
    ...['Lead wire', 'Body loose'],
  ],
}
const plan: DocumentContent<'plan'> = {
  spans: [
    ...turn('s1', [0, 13], { drives: IDA, marshals: BEA, wall: TOM }),
    ...turn('s1', [13, 27], { drives: TOM, marshals: IDA, wall: BEA }),
    ...turn('s1', [27, 40], { drives: BEA, marshals: TOM, wall: IDA }),
    ...turn('s2', [0, 40], { drives: IDA, marshals: BEA, wall: TOM }),
  ],
  stops: [
    { id: 't1', segment: 's1', atMs: 13 * MINUTE_MS, mandatory: true, task: 'Change driver' },
    { id: 't2', segment: 's1', atMs: 27 * MINUTE_MS, mandatory: true, task: 'Change driver' },
  ],
  captain: { goMarginMs: 2_000, askForClockAtMs: 5_000, hotWorkInStops: false },
}
export const LANTERN_FORTY = { rules, crew, car, plan }

/** Everybody to the duty planned for the first thirteen minutes. */
const FIRST_MOVES: Move[] = [
  { person: TOM, duty: 'wall' },
  { person: BEA, duty: 'post', post: '2' },
  { person: IDA, duty: 'controller' },
]

interface Turn {
  readonly drives: string
  readonly marshals: string
  readonly wall: string
}

function turn(segment: string, [from, to]: [number, number], people: Turn) {
  const id = `${segment}-${from}`
  const when = { segment, fromMs: from * MINUTE_MS, toMs: to * MINUTE_MS }
  return [
    { id: `${id}-drive`, person: people.drives, duty: 'controller' as const, ...when },
    { id: `${id}-post`, person: people.marshals, duty: 'post' as const, post: '2', ...when },
    { id: `${id}-wall`, person: people.wall, duty: 'wall' as const, ...when },
  ]
}

export interface MeetingOptions {
  readonly fictional?: NewMeeting['fictional']
  /** Where the meeting stands when the test begins; a green later than that has not been given. */
  readonly minutesAfterGreen?: number
}

export interface EnteredMeeting {
  readonly id: string
  readonly path: (screen: string) => string
  /** Records over HTTP what happened so many seconds ago. @returns the entry's id */
  readonly press: <K extends Kind>(kind: K, body: Body<K>, secondsAgo?: number) => Promise<string>
}

/** The documents are adopted; with `minutesAfterGreen` the first segment has run for so long. */
export async function enterMeeting(
  captain: Device,
  { fictional, minutesAfterGreen }: MeetingOptions = {},
): Promise<EnteredMeeting> {
  const made = await captain.call('POST', '/api/meetings', {
    id: uuidV7(),
    name: rules.name,
    ...(fictional && { fictional }),
  })
  const { id, clock } = meetingSchema.parse(made)
  const { serverMs, epoch } = clockStandingSchema.parse(await captain.call('GET', '/api/clock'))
  const aheadMs = serverMs - Date.now()
  let n = 0
  const press: EnteredMeeting['press'] = async (kind, body, secondsAgo = 0) => {
    const at = meetingTime(clock, Date.now() + aheadMs) - secondsAgo * 1_000
    const said = { kind, body: JSON.stringify(body), at, atBoundMs: 0, epoch }
    const entry: Entry = { v: ENVELOPE_VERSION, id: uuidV7(), device: captain.id, n: ++n, ...said }
    const answer = await captain.call('POST', `/api/meetings/${id}/entries`, {
      meeting: id,
      entries: [entry],
    })
    const [result] = appendedSchema.parse(answer).results
    if (result?.outcome !== 'recorded') throw new Error(`Not taken: ${JSON.stringify(result)}`)
    return entry.id
  }
  const agoSeconds = (minutesAfterGreen ?? 0) * 60
  for (const [document, content] of Object.entries(LANTERN_FORTY)) {
    await captain.call('PUT', `/api/meetings/${id}/documents/${document}`, { basedOn: 0, content })
    await press('adopted.1', adoption(document as DocumentName, content), agoSeconds + 600)
  }
  if (minutesAfterGreen !== undefined) {
    await press('handover.1', { moves: FIRST_MOVES }, agoSeconds + 60)
    await press('green.1', { segment: 's1' }, agoSeconds)
  }
  return { id, path: (screen) => `/meetings/${id}/${screen}`, press }
}

export function adoption(document: DocumentName, content: unknown): Body<'adopted.1'> {
  const sha256 = createHash('sha256').update(JSON.stringify(content)).digest('hex')
  return { document, version: 1, sha256, content, appliesFrom: 0, as: 'correction' }
}
