/** What a copy holds before it is brought in, and what became of it. */
import type { BroughtIn, MeetingCopy } from '@pitlamp/contract'
import type { Clash, Merged } from '@pitlamp/sync'
import { entriesInWords, heldInWords, missingIn } from '../../parts/copy-words.ts'
import { about } from '../../parts/time.ts'

export function holds({ copy }: Merged, asOf: string): string {
  return `${copy.meeting.name}: ${heldInWords(copy)}, as of ${asOf}`
}

/** A sentence for each thing that was kept, or was not. */
export function becameOf({ copy, clashes }: Merged, result: BroughtIn): readonly string[] {
  const { meeting, recorded, unsent, already, left, behindMs } = result
  const fresh = recorded + unsent
  const missing = missingIn(copy)
  return [
    `${meeting.name} is here: ${entriesInWords(fresh)} brought in, with the ids they had${unsentWords(unsent)}.`,
    ...(already > 0 ? [`${entriesInWords(already)} were here already.`] : []),
    ...clashes.map((clash) => clashWords(clash, copy)),
    ...leftWords(left),
    ...(missing > 0 ? [missingWords(missing)] : []),
    ...(behindMs === undefined ? [] : [behindWords(behindMs)]),
    ...(fresh > 0 ? NOT_IN_A_COPY : []),
  ]
}

const NOT_IN_A_COPY = [
  'Not in a copy: who had joined, links to the plan, and earlier versions of drafts. Every device joins again: Team shows the codes.',
  'A device that still keeps entries sends them once it has joined, if this server has the address of the old one. At another address write a copy on that device, and bring it in too.',
]

function unsentWords(unsent: number): string {
  return unsent === 0 ? '' : `, ${unsent} of them from a device that had not sent them`
}

function clashWords({ device, n, stands }: Clash, { devices }: MeetingCopy): string {
  const name = devices.find(({ id }) => id === device)?.name ?? `device ${device.slice(-4)}`
  const which =
    stands === 'recorded'
      ? 'The one that the server had recorded was taken'
      : 'One of them was taken'
  return `Entry ${n} of ${name} is not the same in every copy. ${which}.`
}

function leftWords(left: BroughtIn['left']): readonly string[] {
  const differ = left.filter(({ refusal }) => refusal === 'otherBody').length
  const others = left.length - differ
  return [
    ...(differ > 0
      ? [`${entriesInWords(differ)} left out: here is another one under the same id, which stands.`]
      : []),
    ...(others > 0
      ? [
          `${entriesInWords(others)} left out: their device might not record them, or they do not make sense.`,
        ]
      : []),
  ]
}

function missingWords(missing: number): string {
  return `The old server had ${entriesInWords(missing)} more than these copies. They come back from the devices that recorded them, or in a copy of another one.`
}

function behindWords(behindMs: number): string {
  return `This machine’s clock is ${about(behindMs)} behind the copy, and every countdown with it: set it right and start the server again.`
}
