/** Who holds which device, as they said themselves: now, or when they last recorded something with it. */
import type { MeetingPort } from '../meeting/port.ts'
import { crewNames } from './crew.ts'

type From = Pick<MeetingPort, 'screens' | 'state' | 'now'>

/** The person's id; undefined where nobody has said so. */
export function holderOf({ screens, state }: From, device: string): string | undefined {
  const said = screens.find((screen) => screen.device === device)?.report?.person
  if (said !== undefined) return said
  const { log } = state.record
  for (let i = log.length - 1; i >= 0; i -= 1) {
    const entry = log[i]?.entry
    if (entry?.device === device && entry.person !== undefined) return entry.person
  }
  return undefined
}

/** `Ida Quill’s phone` where it is known who holds it, else what the device is called. */
export function deviceWords(
  from: From,
  { device, name }: { device: string; name: string },
): string {
  const person = holderOf(from, device)
  return person === undefined ? name : `${crewNames(from.state, from.now).nameOf(person)}’s phone`
}
