/** Lantern Forty on fixed lanes: six lanes and two sit-outs, eight segments of 20 min, five min between them. */
import type { DocumentContent } from '@pitlamp/race'
import { adoption, BEA, enterMeeting, IDA, LANTERN_FORTY, TOM } from './lantern-forty.ts'
import type { EnteredMeeting } from './lantern-forty.ts'
import type { House } from './screens.ts'
import type { Happens, View } from './view.ts'

const MINUTE_MS = 60_000
const SEGMENTS = [1, 2, 3, 4, 5, 6, 7, 8]

const rules: DocumentContent<'rules'> = {
  ...LANTERN_FORTY.rules,
  programme: SEGMENTS.flatMap((number): DocumentContent<'rules'>['programme'] => [
    {
      ...{ id: `s${number}`, kind: 'segment', lane: 'notDrawnYet' },
      length: { by: 'time', lengthMs: 20 * MINUTE_MS },
    },
    ...(number === 8 ? [] : [{ id: `c${number}`, kind: 'laneChange' as const }]),
  ]),
  rules: [
    {
      ...{ id: 'track', kind: 'tracks' },
      value: {
        ...{ tracks: 1, lanes: 6, sections: 50 },
        colours: ['red', 'white', 'green', 'blue', 'yellow', 'black'],
      },
    },
    { id: 'order', kind: 'laneOrder', value: { moves: 'oddUpEvenDown', sitOutsAfter: [5, 2] } },
    {
      ...{ id: 'change', kind: 'laneChange' },
      value: { lengthMs: 5 * MINUTE_MS, earliestMs: 3 * MINUTE_MS, movedBy: 'judges' },
    },
    { id: 'post', kind: 'postByLane', value: { tied: true } },
    { id: 'dark', kind: 'darkSegments', value: { segments: ['s2'] } },
    { id: 'out', kind: 'sitOutDuty', value: { obliges: 'marshalSomePosts', posts: 2 } },
    {
      ...{ id: 'hands', kind: 'workAllowed', clause: '7.2' },
      value: { during: 'laneChange', allowed: false, costLaps: 8 },
    },
    { id: 'at', kind: 'restart', value: { at: 'sameSection' } },
  ],
}

const DRIVERS = [IDA, TOM, BEA]
const plan: DocumentContent<'plan'> = {
  ...{ stops: [], captain: LANTERN_FORTY.plan.captain },
  spans: SEGMENTS.flatMap((number) => {
    const whole = { segment: `s${number}`, fromMs: 0, toMs: 20 * MINUTE_MS }
    const drives = DRIVERS[(number - 1) % 3] ?? IDA
    const marshals = DRIVERS[number % 3] ?? TOM
    return [
      { id: `d${number}`, person: drives, duty: 'controller' as const, ...whole },
      { id: `m${number}`, person: marshals, duty: 'post' as const, ...whole },
    ]
  }),
}
const ON_LANES = { rules, plan }

export interface Lanes {
  readonly minutesAfterGreen?: number
  /** The lane drawn for the start; 1 where none is named, undrawn where it is null. */
  readonly start?: number | null
}

/** Its documents adopted over Lantern Forty's. */
export async function enterLanes(
  house: House,
  { minutesAfterGreen, start = 1 }: Lanes = {},
): Promise<EnteredMeeting> {
  const captain = await house.captain()
  const meeting = await enterMeeting(captain, { minutesAfterGreen })
  for (const [document, content] of Object.entries(ON_LANES)) {
    const path = `/api/meetings/${meeting.id}/documents/${document}`
    await captain.call('PUT', path, { basedOn: 1, content })
  }
  const ago = (minutesAfterGreen ?? 0) * 60 + 300
  await meeting.press('adopted.1', { ...adoption('rules', rules), version: 2 }, ago)
  await meeting.press('adopted.1', { ...adoption('plan', plan), version: 2 }, ago)
  if (minutesAfterGreen !== undefined) {
    const moves = [
      { person: BEA, duty: 'offDuty' as const },
      { person: TOM, duty: 'post' as const, post: '1' },
    ]
    await meeting.press('handover.1', { moves }, minutesAfterGreen * 60 + 30)
  }
  if (start !== null) await meeting.press('startDrawn.1', { lane: start }, ago)
  return meeting
}

export function onLanes(
  screen: string,
  {
    role = 'pitWall',
    happens,
    ...lanes
  }: Lanes & { role?: 'pitWall' | 'crew' | 'captain'; happens?: Happens } = {},
): View['open'] {
  return async (house) => {
    const meeting = await enterLanes(house, lanes)
    await happens?.(meeting)
    return { page: await house.screen(role, 'Wall tablet'), path: meeting.path(screen) }
  }
}
