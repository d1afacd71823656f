/** The tray in words: what each device kept of each meeting, in the order in which it was recorded. */
import { entrySchema, readEntry } from '@pitlamp/race'
import type { AppendResult, TrayLine } from '@pitlamp/contract'
import { refusalSentence } from '@pitlamp/contract'
import { entryWords } from '../../parts/entry-words.ts'
import { clockTime } from '../../parts/time.ts'

/** What is known of a meeting whose entries lie here. */
export interface MeetingNames {
  readonly name: string
  readonly timeZone: string
  readonly nameOf: (person: string) => string
}

interface Kept {
  readonly id: string
  /** At the venue; empty where it cannot be read. */
  readonly time: string
  readonly words: string
  readonly decided: NonNullable<TrayLine['decided']>['what'] | undefined
  /** Why it was not taken in when it was tried. */
  readonly why: string | undefined
}

export interface Group {
  readonly key: string
  readonly device: string
  readonly meeting: string
  readonly name: string
  readonly of: string
  readonly lines: readonly Kept[]
  /** By id: those still to be decided on. */
  readonly waiting: readonly string[]
}

interface From {
  readonly lines: readonly TrayLine[]
  readonly namesOf: (meeting: string) => MeetingNames
  readonly why: ReadonlyMap<string, string>
}

export function trayGroups({ lines, namesOf, why }: From): readonly Group[] {
  const groups = new Map<string, TrayLine[]>()
  for (const line of lines) {
    const key = `${line.device} ${line.meeting}`
    const group = groups.get(key)
    if (group) group.push(line)
    else groups.set(key, [line])
  }
  return [...groups].map(([key, ofIt]) => {
    const names = namesOf(ofIt[0]?.meeting ?? '')
    const kept = [...ofIt]
      .sort((a, b) => placeOf(a) - placeOf(b))
      .map((line) => keptOf(line, { names, why }))
    const { device = '', meeting = '', name = '' } = ofIt[0] ?? {}
    return {
      ...{ key, device, meeting, name, of: names.name, lines: kept },
      waiting: kept.filter(({ decided }) => decided === undefined).map(({ id }) => id),
    }
  })
}

/** Why an entry was refused, with what exactly where that is said. */
export function whyNot(result: AppendResult): string | undefined {
  if (result.outcome !== 'refused') return undefined
  return [WHY[result.refusal] ?? refusalSentence(result.refusal), result.detail]
    .filter(Boolean)
    .join(' ')
}

/** The sentences for the device that recorded it do not fit here. */
const WHY: Partial<Record<string, string>> = {
  malformed: 'It cannot be read.',
  otherBody: 'The log has an entry with this id that says something else.',
  roleMayNot: 'The device was not allowed to record that.',
  otherMeeting: 'Its meeting is not one of this team’s.',
  notFound: 'It is no longer in the tray.',
}

/** A device counts what it records. */
function placeOf({ entry }: TrayLine): number {
  const { n } = (entry ?? {}) as { readonly n?: unknown }
  return typeof n === 'number' ? n : 0
}

function keptOf(
  { id, entry, decided }: TrayLine,
  { names, why }: Pick<From, 'why'> & { readonly names: MeetingNames },
): Kept {
  const { data } = entrySchema.safeParse(entry)
  const rest = { id, decided: decided?.what, why: why.get(id) }
  if (!data) return { ...rest, time: '', words: 'Something that cannot be read' }
  const read = readEntry(data)
  const words =
    'unread' in read
      ? `Something that cannot be read (${data.kind})`
      : entryWords(read, names.nameOf)
  return { ...rest, time: clockTime(data.at, names.timeZone, { seconds: true }), words }
}
