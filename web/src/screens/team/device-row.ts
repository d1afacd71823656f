/** One device of the team in words: who holds it, when it was seen, how it stands, whether it may take the wall. */
import type { Device, DeviceReport } from '@pitlamp/contract'
import type { Role } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { crewNames } from '../../parts/crew.ts'
import { holderOf } from '../../parts/holders.ts'
import { powerWords, readiness } from '../../parts/readiness.ts'
import { clockWords } from '../../parts/standing.ts'
import { about } from '../../parts/time.ts'

export interface Row {
  readonly id: string
  readonly name: string
  readonly role: Role
  readonly own: boolean
  /** `held by Ida Quill` */
  readonly holder?: string
  readonly seen: string
  /** Charger and clock, as its screen reports them. */
  readonly standing: readonly string[]
  /** `ready`, or what stands in the way; undefined for a device that is not here. */
  readonly ready?: string
  /** Undefined for a device to which the wall is not given: only crew takes it. */
  readonly wall?: 'mayNot' | 'may' | 'has'
}

type Parts = Pick<MeetingPort, 'id' | 'device' | 'screens' | 'state' | 'now'>
type From = Parts & {
  /** Server time when the devices were asked for. */
  readonly askedAt: number
}

/** What a row is made from, read out of the port: a copy of the port itself has none of its getters. */
export function portParts({ id, device, screens, state, now }: MeetingPort): Parts {
  return { id, device, screens, state, now }
}

export function deviceRow(device: Device, from: From): Row {
  const { id, name, role } = device
  const screen = from.screens.find((one) => one.device === id)
  const person = holderOf(from, id)
  const holder = person && `held by ${crewNames(from.state, from.now).nameOf(person)}`
  const wall = wallOf(device, from.id)
  return {
    ...{ id, name, role, own: id === from.device, seen: seenWords(device, from) },
    ...(holder !== undefined && { holder }),
    standing: screen?.report ? standingWords(screen.report) : [],
    ...(screen && { ready: readyWords(screen.report) }),
    ...(wall && { wall }),
  }
}

function seenWords({ id, seenAt }: Device, { device, screens, askedAt }: From): string {
  if (id === device) return 'this device'
  if (screens.some((screen) => screen.device === id)) return 'here now'
  return seenAt === undefined ? 'not seen yet' : `seen ${about(askedAt - seenAt)} ago`
}

function standingWords(report: DeviceReport): readonly string[] {
  const power = powerWords(report)
  const clock = clockWords(report.clock)
  return power === undefined ? [clock] : [power, clock]
}

function readyWords(report: DeviceReport | undefined): string {
  if (!report) return 'has not said how it stands'
  const { ready, missing } = readiness(report)
  if (ready) return 'ready'
  return report.check ? `not ready: ${missing.join(' · ')}` : 'not checked yet'
}

function wallOf({ role, wall }: Device, meeting: string): Row['wall'] {
  if (role !== 'crew') return undefined
  if (wall?.meeting !== meeting) return 'mayNot'
  return wall.takenAt === undefined ? 'may' : 'has'
}
