/** What the team's screens ask for: meetings, people, devices, invitations, the server's clock. */
import {
  clockStandingSchema,
  devicesSchema,
  deviceSchema,
  inviteSchema,
  meetingSchema,
  meetingsSchema,
  meSchema,
  peopleSchema,
  personSchema,
  type AskInvite,
  type ChangeDevice,
  type Join,
  type NewMeeting,
  type OpenDemo,
  type Person,
  type SettleClock,
} from '@pitlamp/contract'
import { ask } from './ask.ts'

export const join = (body: Join) => ask(meSchema, 'POST /api/join', body)

export const askMeetings = () => ask(meetingsSchema, 'GET /api/meetings')
export const makeMeeting = (body: NewMeeting) => ask(meetingSchema, 'POST /api/meetings', body)
export const openDemo = (body: OpenDemo) => ask(meetingSchema, 'POST /api/demo', body)

export const askPeople = () => ask(peopleSchema, 'GET /api/people')
export const addPerson = (body: Person) => ask(personSchema, 'POST /api/people', body)

export const askInvite = (body: AskInvite) => ask(inviteSchema, 'POST /api/invites', body)
export const askDevices = () => ask(devicesSchema, 'GET /api/devices')
export const changeDevice = (id: string, body: ChangeDevice) =>
  ask(deviceSchema, `PATCH /api/devices/${id}`, body)

export const askClock = () => ask(clockStandingSchema, 'GET /api/clock')
export const settleClock = (body: SettleClock) =>
  ask(clockStandingSchema, 'POST /api/clock/settle', body)
