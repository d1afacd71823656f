/** Changing the crew that is being written. Changes are made in place. */
import { DUTIES, type CrewMember, type Duty } from '@pitlamp/race'
import { freshId } from '../../planning/defaults.ts'

type Presence = NonNullable<CrewMember['there']>[number]

export const DUTY_WORDS = [
  ['controller', 'drives'],
  ['post', 'marshals'],
  ['wall', 'wall'],
  ['bench', 'bench'],
] as const satisfies readonly (readonly [Duty, string])[]

const LONGEST_LAP_MS = 600_000

/** None named means all. */
export function canTake({ duties }: CrewMember, duty: Duty): boolean {
  return duties.length === 0 || duties.includes(duty)
}

/** Somebody who can do nothing is off duty, since no duty named means all of them. */
export function turnDuty(person: CrewMember, duty: Duty): void {
  const could = DUTIES.filter((one) => one !== 'offDuty' && canTake(person, one))
  const can = could.includes(duty) ? could.filter((one) => one !== duty) : [...could, duty]
  person.duties = can.length === 0 ? ['offDuty'] : DUTIES.filter((one) => can.includes(one))
}

export function addCategory(person: CrewMember, text: string): void {
  const category = text.trim().slice(0, 80)
  const has = person.categories ?? []
  if (category !== '' && !has.includes(category) && has.length < 8) {
    person.categories = [...has, category]
  }
}

export function takeCategory(person: CrewMember, category: string): void {
  const left = (person.categories ?? []).filter((one) => one !== category)
  person.categories = left.length > 0 ? left : undefined
}

/** A stretch of meeting time, both ends open until somebody says more. */
export function addPresence(person: CrewMember): void {
  const there = person.there ?? []
  person.there = [...there, { id: freshId('t', there) }]
}

export function setPresence(
  presence: Presence,
  end: 'fromAt' | 'toAt',
  at: number | undefined,
): void {
  presence[end] = at
}

export function takePresence(person: CrewMember, id: string): void {
  const left = (person.there ?? []).filter((one) => one.id !== id)
  person.there = left.length > 0 ? left : undefined
}

/** One rest without a break; none where nothing is said. */
export function setRest(person: CrewMember, atLeastMs: number | undefined): void {
  person.restBlock = atLeastMs === undefined ? undefined : { ...person.restBlock, atLeastMs }
}

export function setRestEnd(
  person: CrewMember,
  end: 'fromAt' | 'toAt',
  at: number | undefined,
): void {
  if (person.restBlock) person.restBlock[end] = at
}

/** `8.42 s`, `8,42` or `1:02.5`, in whole milliseconds; undefined for what is no lap time. */
export function readLapTime(text: string): number | undefined {
  const [, minutes = '0', seconds, part = ''] =
    /^(?:(\d{1,2}):)?(\d{1,3})(?:[.,](\d{1,3}))?\s*s?$/.exec(text.trim()) ?? []
  const ms = Number(minutes) * 60_000 + Number(seconds) * 1_000 + Number(part.padEnd(3, '0'))
  return ms <= LONGEST_LAP_MS ? ms : undefined
}

export function writeLapTime(ms: number): string {
  const text = (ms / 1_000).toFixed(3)
  return `${text.replace(/0$/, '')} s`
}
