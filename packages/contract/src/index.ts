export {
  PROTOCOL_VERSION,
  BATCH_ENTRIES,
  BATCH_BYTES,
  BATCH_LIMIT_BYTES,
  PAGE_ENTRIES,
  PROBE_EVERY_MS,
  SILENCE_MS,
} from './protocol.ts'
export { refusalSchema, refusalSentence, type Refusal } from './refusal.ts'
export { problem, problemSchema, type Problem } from './problem.ts'
export { helloSchema, welcomeSchema, type Hello, type Welcome } from './socket/hello.ts'
export {
  appendSchema,
  appendResultSchema,
  appendedSchema,
  type Append,
  type AppendResult,
  type Appended,
} from './socket/append.ts'
export { pushSchema, type Push } from './socket/push.ts'
export { probeSchema, probeAnswerSchema, type Probe, type ProbeAnswer } from './socket/probe.ts'
export { clockStandingSchema, type ClockStanding } from './socket/clock.ts'
export { presenceSchema, type Presence } from './socket/presence.ts'
export { deviceCheckSchema, deviceReportSchema } from './socket/report.ts'
export type { DeviceCheck, DeviceReport } from './socket/report.ts'
export { roleSaidSchema, type RoleSaid } from './socket/role.ts'
export { wallStandingSchema, type WallStanding } from './socket/wall.ts'
export type { Answer, ScreenToServer, ServerToScreen } from './socket/events.ts'
export {
  meetingSchema,
  meetingsSchema,
  meetingClockSchema,
  newMeetingSchema,
  type Meeting,
  type MeetingClock,
  type NewMeeting,
} from './http/meeting.ts'
export { entriesPageSchema, type EntriesPage } from './http/entries.ts'
export {
  draftSchema,
  saveDraftSchema,
  staleDraftSchema,
  draftVersionSchema,
  draftVersionsSchema,
  type Draft,
  type DraftVersion,
  type DraftVersions,
  type SaveDraft,
  type StaleDraft,
} from './http/document.ts'
export {
  openPlanSchema,
  planLinkSchema,
  planLinksRevokedSchema,
  sharedPlanSchema,
  type OpenPlan,
  type PlanLink,
  type PlanLinksRevoked,
  type SharedPlan,
} from './http/plan.ts'
export {
  joinSchema,
  meSchema,
  askInviteSchema,
  inviteSchema,
  deviceSchema,
  devicesSchema,
  changeDeviceSchema,
  type Join,
  type Me,
  type AskInvite,
  type Invite,
  type Device,
  type ChangeDevice,
} from './http/access.ts'
export {
  decideTraySchema,
  leftAsideSchema,
  trayLineSchema,
  traySchema,
  type DecideTray,
  type LeftAside,
  type Tray,
  type TrayLine,
} from './http/tray.ts'
export {
  workLineSchema,
  workOutSchema,
  type Cost,
  type Impossible,
  type NotDone,
  type Worked,
  type Working,
  type WorkLine,
  type WorkOut,
} from './http/work.ts'
export { takeBackWallSchema, type TakeBackWall } from './http/wall.ts'
export { personSchema, peopleSchema, type Person } from './http/person.ts'
export { openDemoSchema, type DemoOf, type OpenDemo } from './http/demo.ts'
export { settleClockSchema, type SettleClock } from './http/clock.ts'
export { broughtInSchema, type BroughtIn } from './http/copy.ts'
export {
  COPY_LIMIT_BYTES,
  COPY_VERSION,
  meetingCopySchema,
  type MeetingCopy,
  type Unsent,
} from './copy/meeting-copy.ts'
export { readCopy } from './copy/read-copy.ts'
export { writeCopy } from './copy/write-copy.ts'
export { meetingTime, serverTime } from './meeting-time.ts'
