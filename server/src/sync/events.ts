/** What a screen says, and what it is answered. */
import {
  appendSchema,
  deviceReportSchema,
  helloSchema,
  problem,
  probeSchema,
  PROTOCOL_VERSION,
  type Answer,
  type Appended,
  type ProbeAnswer,
  type Welcome,
} from '@pitlamp/contract'
import { ownMeeting } from '../access/guard.ts'
import { roleIn, wallIn } from '../access/role-in.ts'
import { takeEntries } from './intake.ts'
import { meetingRoom } from './log-news.ts'
import type { Room, Socket } from './sockets.ts'

export function onHello(room: Room, socket: Socket) {
  return async (message: unknown): Promise<Answer<Welcome>> => {
    const { deps, news, lag, presence } = room
    const parsed = helloSchema.safeParse(message)
    if (!parsed.success) return { problem: problem('malformedRequest') }
    const { protocol, meeting: id } = parsed.data
    if (protocol !== PROTOCOL_VERSION) return { problem: problem('otherProtocol') }
    const { holder } = socket.data
    const { team, device } = holder
    if (!(await ownMeeting(deps.storage, holder, id))) return { problem: problem('otherMeeting') }
    const writers = await namesOfWriters(room, team.id, id)
    // One team's devices say nothing on a clock that others go by too.
    const reckoned = (await deps.storage.read.isShared()) ? undefined : parsed.data.reckoned
    // Last of all: nothing may come into the log between this and the place in the room.
    const meeting = await ownMeeting(deps.storage, holder, id)
    if (!meeting) return { problem: problem('otherMeeting') }
    moveTo(room, socket, id)
    lag.watch(meeting)
    presence.changed(id)
    const { epoch } = deps.time
    if (deps.time.meet(`${team.id}/${device.id}`, reckoned)) room.tellClock()
    if (deps.time.epoch !== epoch) {
      deps.storage.run('keepTime', deps.time.kept()).catch(() => undefined)
    }
    const seen = { team: team.id, device: device.id, nowMs: deps.time.now() }
    deps.storage.run('deviceSeen', seen).catch(() => undefined)
    const lastSeq = news.headFor(id, meeting.lastSeq)
    const { device: now } = socket.data.holder
    const wall = wallIn(now, id)
    return {
      ok: {
        device: { id: now.id, name: now.name, role: roleIn(now, id), ...(wall && { wall }) },
        meeting: { ...meeting, lastSeq },
        clock: deps.time.standing(),
        writers,
      },
    }
  }
}

async function namesOfWriters({ deps, writers }: Room, team: string, meeting: string) {
  const wrote = await writers.of(meeting)
  const devices = await deps.storage.read.devices(team)
  return devices.flatMap(({ id, name }) => (wrote.has(id) ? [{ device: id, name }] : []))
}

/** What a screen says of itself; everybody hears it with the presence. */
export function onReport({ presence }: Room, socket: Socket, message: unknown): void {
  const { data } = deviceReportSchema.safeParse(message)
  if (!data) return
  socket.data.report = data
  if (socket.data.meeting !== undefined) presence.changed(socket.data.meeting)
}

function moveTo({ presence }: Room, socket: Socket, meeting: string): void {
  const before = socket.data.meeting
  if (before !== undefined && before !== meeting) {
    void socket.leave(meetingRoom(before))
    presence.changed(before)
  }
  socket.data.meeting = meeting
  void socket.join(meetingRoom(meeting))
}

export function onAppend({ deps }: Room, socket: Socket) {
  return async (message: unknown): Promise<Answer<Appended>> => {
    const parsed = appendSchema.safeParse(message)
    if (!parsed.success) return { problem: problem('malformedRequest') }
    return takeEntries(deps, socket.data.holder, parsed.data)
  }
}

/** Stamped on arrival and just before the answer, so that the time in between is not taken for the network's. */
export function onProbe(
  { deps: { time } }: Room,
  message: unknown,
  answer: (answer: ProbeAnswer) => void,
): void {
  const t1 = time.now()
  const parsed = probeSchema.safeParse(message)
  if (parsed.success) answer({ t0: parsed.data.t0, t1, t2: time.now(), epoch: time.epoch })
}
