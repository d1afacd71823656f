/**
 * The table that `teams.test.ts` goes through: every route and every socket event, who of a team is let in, and what
 * another team's captain gets who names what is ours. What has no row here fails that test.
 */
import { ROLES, type Entry, type Role } from '@pitlamp/race'
import { PROTOCOL_VERSION, type ScreenToServer } from '@pitlamp/contract'

/** What one team has, by the names and ids under which it can be asked for. */
export interface Named {
  readonly meeting: string
  /** A device of the team. */
  readonly device: string
  readonly person: string
  /** A device that was taken out, and what it sent afterwards. */
  readonly gone: { readonly device: string; readonly entry: string }
  /** A code that the asking device was given by its own captain, to join and to see a plan. */
  readonly codes: { readonly join: string; readonly plan: string }
  /** The next entry of the asking device. */
  readonly entry: () => Entry
}

/** Besides roles: `anyone` needs no device, `sender` may be a device that was taken out. */
export type Who = 'anyone' | 'sender' | readonly Role[]

export interface WayIn {
  readonly who: Who
  /** Where the address has places, what goes there. */
  readonly at?: (of: Named) => Readonly<Record<string, string>>
  readonly body?: (of: Named) => unknown
  /** The status, and the refusal where there is one, in the answer or for the entry in it. */
  readonly stranger: string
}

const captain: readonly Role[] = ['captain']
const meeting = ({ meeting: id }: Named) => ({ meeting: id })
const nothing = () => ({})

const read = (at?: WayIn['at']): WayIn => ({
  who: ROLES,
  ...(at && { at }),
  stranger: at ? '404 otherMeeting' : '200',
})
const open = (body?: WayIn['body']): WayIn => ({
  who: 'anyone',
  ...(body && { body }),
  stranger: '200',
})
const draft = (of: Named) => ({ ...meeting(of), document: 'rules' })
const tray = ({ meeting: id, gone }: Named) => ({
  meeting: id,
  device: gone.device,
  entries: [gone.entry],
})

export const ROUTES: Readonly<Record<string, WayIn>> = {
  'GET /*': open(),
  'GET /healthz': open(),
  'GET /readyz': open(),
  'GET /authority.crt': open(),
  // For whoever has the operator's token, which no device has.
  'GET /metrics': { who: 'anyone', stranger: '404 notFound' },
  'GET /api/openapi.json': open(),
  'POST /api/plan': open(({ codes }) => ({ code: codes.plan })),
  'POST /api/plan/calendar': open(({ codes }) => ({ code: codes.plan })),
  'GET /api/me': read(),
  'GET /api/meetings': read(),
  'GET /api/people': read(),
  'GET /api/clock': read(),
  'GET /api/meetings/:meeting': read(meeting),
  'GET /api/meetings/:meeting/entries': read(meeting),
  'GET /api/meetings/:meeting/calendar.ics': read(meeting),
  'GET /api/meetings/:meeting/documents/:document': read(draft),
  'GET /api/meetings/:meeting/documents/:document/versions': read(draft),
  'GET /api/meetings/:meeting/documents/:document/versions/:version': read((of) => ({
    ...draft(of),
    version: '1',
  })),
  'POST /api/meetings/:meeting/entries': {
    who: 'sender',
    at: meeting,
    body: ({ meeting: id, entry }) => ({ meeting: id, entries: [entry()] }),
    stranger: '200 otherMeeting',
  },
  'POST /api/meetings': {
    who: captain,
    body: ({ meeting: id }) => ({ id, name: 'Another' }),
    stranger: '404 otherMeeting',
  },
  'POST /api/copies': {
    who: captain,
    body: ({ meeting: id, device }) => ({
      ...{ pitlampCopy: 1, writtenAt: 1, asOf: 1 },
      device: { id: device, name: 'Another', role: 'captain' },
      meeting: {
        ...{ id, name: 'Another', fictional: false, createdAt: 1, lastSeq: 0 },
        clock: { anchorServerMs: 1, anchorMeetingMs: 1, rate: 1 },
      },
      ...{ devices: [], people: [], drafts: [], recorded: [], unsent: [] },
    }),
    stranger: '404 otherMeeting',
  },
  'PUT /api/meetings/:meeting/documents/:document': {
    who: captain,
    at: draft,
    body: () => ({ basedOn: 1, content: 'another' }),
    stranger: '404 otherMeeting',
  },
  'POST /api/meetings/:meeting/plan-link': {
    who: captain,
    at: meeting,
    stranger: '404 otherMeeting',
  },
  'DELETE /api/meetings/:meeting/plan-link': {
    who: captain,
    at: meeting,
    stranger: '404 otherMeeting',
  },
  'POST /api/meetings/:meeting/work': {
    who: ['pitWall', 'captain'],
    at: meeting,
    body: () => ({
      ...{ from: 'drafts', want: 'plan', duties: [] },
      balance: { toleranceMs: 0, lapsPerHour: 0 },
    }),
    stranger: '404 otherMeeting',
  },
  'POST /api/meetings/:meeting/wall/take': {
    who: ['crew'],
    at: meeting,
    body: nothing,
    stranger: '403 roleMayNot',
  },
  'POST /api/meetings/:meeting/wall/give-back': {
    who: ['crew'],
    at: meeting,
    body: nothing,
    stranger: '403 roleMayNot',
  },
  'POST /api/meetings/:meeting/wall/take-back': {
    who: ['pitWall', 'captain'],
    at: meeting,
    body: ({ device }) => ({ device }),
    stranger: '404 otherMeeting',
  },
  'POST /api/people': {
    who: captain,
    body: ({ person: id }) => ({ id, name: 'Another' }),
    // The id is a team's own: another team's person of the same id is another person.
    stranger: '200',
  },
  'POST /api/invites': {
    who: captain,
    body: () => ({ role: 'viewer', as: 'qr' }),
    stranger: '200',
  },
  'GET /api/devices': { who: captain, stranger: '200' },
  'PATCH /api/devices/:device': {
    who: captain,
    at: ({ device }) => ({ device }),
    body: ({ meeting: id }) => ({ name: 'Another', mayTakeWallIn: id }),
    stranger: '404 notFound',
  },
  'GET /api/tray': { who: captain, stranger: '200' },
  'POST /api/tray/take-in': { who: captain, body: tray, stranger: '200 notFound' },
  'POST /api/tray/leave-aside': { who: captain, body: tray, stranger: '200' },
  'POST /api/demo': { who: captain, body: nothing, stranger: '200' },
  'POST /api/clock/settle': {
    who: captain,
    body: () => ({ epoch: 1, shiftMs: 60_000 }),
    // Two teams go by this clock.
    stranger: '403 roleMayNot',
  },
  // Last of all: from here on they have a device with the id of one of ours.
  'POST /api/join': open(({ codes, device }) => ({ code: codes.join, device, name: 'Another' })),
}

export interface Event {
  readonly who: readonly Role[]
  readonly says: (of: Named) => unknown
  /** The refusal, in the answer or for the entry in it; without one it is answered, or heard by its own team only. */
  readonly stranger: string
  readonly answered: boolean
}

export const EVENTS: Readonly<Record<keyof ScreenToServer, Event>> = {
  hello: {
    who: ROLES,
    says: ({ meeting: id }) => ({ protocol: PROTOCOL_VERSION, meeting: id, after: 0 }),
    stranger: 'otherMeeting',
    answered: true,
  },
  append: {
    who: ['pitWall', 'captain'],
    says: ({ meeting: id, entry }) => ({ meeting: id, entries: [entry()] }),
    stranger: 'otherMeeting',
    answered: true,
  },
  probe: { who: ROLES, says: () => ({ t0: 1 }), stranger: '', answered: true },
  report: {
    who: ROLES,
    says: ({ person }) => ({ person, clock: { standing: 'set', boundMs: 7 } }),
    stranger: '',
    answered: false,
  },
}
