/** Power cut after power cut on one data folder, with devices appending all the while. */
import { setTimeout as sleep } from 'node:timers/promises'
import { v7 as uuidV7 } from 'uuid'
import { audit, wholeLog, type Audit } from '../audit.ts'
import { join, type Device } from '../device.ts'
import { startServer, type RunningServer, type ServerOptions } from '../running-server.ts'
import { newCutDisk } from './cut-disk.ts'
import { newPresser, press, sendWhatWasUnderWay, type Presser } from './pressing.ts'
import { newRandom, type Random } from './random.ts'

const DEVICES = 4
/** The moment of a cut: so many acknowledged entries into a run at most, and then so long, at random. */
const CUT_WITHIN_ENTRIES = 300
const CUT_WITHIN_MS = 10
const PATIENCE_MS = 20_000

export interface Chain {
  readonly seed: number
  readonly cuts: number
  /** synced-only.c, compiled. */
  readonly library: string
  /** The program that is cut off, where it is not the one a team runs. */
  readonly program?: readonly string[]
}

interface Meeting {
  readonly id: string
  readonly pressers: readonly Presser[]
}

/** What was found over all restarts, the worst of each. */
export async function chainOfCuts({ seed, cuts, library, program }: Chain): Promise<Audit> {
  const disk = newCutDisk()
  const random = newRandom(seed)
  const options = { data: disk.data, env: disk.env, preload: [library] }
  const { port, meeting } = await makeMeeting(options)
  const audits: Audit[] = []
  for (let cut = 0; cut < cuts; cut++) {
    const server = await startServer({ ...options, port, program })
    audits.push(await auditOf(meeting))
    await pressUntilCut(server, meeting, random)
    disk.cut()
  }
  const server = await startServer({ ...options, port })
  audits.push(await auditOf(meeting))
  for (const presser of meeting.pressers) await sendWhatWasUnderWay(presser, meeting.id)
  audits.push(await auditOf(meeting))
  await server.stop()
  disk.remove()
  return worstOf(audits)
}

async function makeMeeting(options: ServerOptions): Promise<{ port: number; meeting: Meeting }> {
  const server = await startServer(options)
  const captain = await join(server.url, await server.captainCode(), 'Captain')
  const id = uuidV7()
  await captain.call('POST', '/api/meetings', { id, name: 'A night at the Old Ropeworks' })
  const devices: Device[] = [captain]
  while (devices.length < DEVICES) {
    devices.push(await captain.invite('pitWall', `Tablet ${devices.length}`))
  }
  await server.stop()
  return { port: server.port, meeting: { id, pressers: devices.map(newPresser) } }
}

async function pressUntilCut(server: RunningServer, meeting: Meeting, random: Random) {
  const cutAt = told(meeting) + 1 + random.below(CUT_WITHIN_ENTRIES)
  const stopped = Promise.all(meeting.pressers.map((presser) => press(presser, meeting.id, random)))
  await Promise.race([stopped, untilTold(meeting, cutAt)])
  await sleep(random.below(CUT_WITHIN_MS))
  await server.kill()
  await stopped
}

async function auditOf({ id, pressers }: Meeting): Promise<Audit> {
  const device = pressers[0]?.device
  if (!device) throw new Error('Somebody has to press.')
  return audit(await wholeLog(device, id), pressers)
}

async function untilTold(meeting: Meeting, count: number): Promise<void> {
  const latest = performance.now() + PATIENCE_MS
  while (told(meeting) < count && performance.now() < latest) await sleep(1)
}

const told = ({ pressers }: Meeting) =>
  pressers.reduce((sum, { acknowledged }) => sum + acknowledged.size, 0)

function worstOf(audits: readonly Audit[]): Audit {
  return {
    acknowledged: Math.max(...audits.map(({ acknowledged }) => acknowledged)),
    lost: Math.max(...audits.map(({ lost }) => lost)),
    gaps: Math.max(...audits.map(({ gaps }) => gaps)),
    twice: Math.max(...audits.map(({ twice }) => twice)),
    unsent: audits.at(-1)?.unsent ?? 0,
  }
}
