/** Copies that screens wrote, chosen as files: read and made one a meeting here, and brought in with a press. */
import { COPY_LIMIT_BYTES, readCopy, type MeetingCopy } from '@pitlamp/contract'
import { mergeCopies, type Merged } from '@pitlamp/sync'
import { bringIn } from '../../api/copies.ts'
import { Memory } from '../../meeting/memory.ts'
import { calendarDate, clockTime } from '../../parts/time.ts'
import { becameOf, holds } from './bring-in-words.ts'

/** What is read of a file. */
export interface Chosen {
  readonly name: string
  readonly size: number
  readonly text: () => Promise<string>
}

const zone = Intl.DateTimeFormat().resolvedOptions().timeZone

export class BringInModel {
  /** Read and good, one a meeting. */
  #merged = $state.raw<readonly Merged[]>([])
  problems = $state.raw<readonly string[]>([])
  said = $state.raw<readonly string[]>([])
  busy = $state(false)
  readonly #brought: () => void

  constructor(brought: () => void) {
    this.#brought = brought
  }

  readonly found = $derived.by(() =>
    this.#merged.map((one) => {
      const { asOf } = one.copy
      return holds(one, `${clockTime(asOf, zone, { seconds: true })}, ${calendarDate(asOf, zone)}`)
    }),
  )

  /** One file that is no copy, and nothing is offered: what is missing then would not be seen. */
  async choose(files: readonly Chosen[]): Promise<void> {
    this.said = []
    this.#merged = []
    const read = await Promise.all(files.map(readOne))
    this.problems = read.flatMap((one) => ('problem' in one ? [one.problem] : []))
    if (this.problems.length > 0) return
    this.#merged = mergeCopies(read.flatMap((one) => ('copy' in one ? [one.copy] : [])))
  }

  async bringIn(): Promise<void> {
    if (this.busy) return
    this.busy = true
    const said: string[] = []
    const problems: string[] = []
    for (const one of this.#merged) {
      const reply = await bringIn(one.copy)
      if ('ok' in reply) said.push(...becameOf(one, reply.ok))
      else problems.push(`${one.copy.meeting.name}: ${reply.failed.sentence}`)
      if ('ok' in reply) await rememberNames(one.copy)
    }
    this.said = said
    this.problems = problems
    if (problems.length === 0) this.#merged = []
    this.busy = false
    this.#brought()
  }
}

async function readOne({
  name,
  size,
  text,
}: Chosen): Promise<{ readonly copy: MeetingCopy } | { readonly problem: string }> {
  const read =
    size > COPY_LIMIT_BYTES
      ? { problem: 'It is too long for a copy.' }
      : readCopy(await text().catch(() => ''))
  return 'copy' in read ? read : { problem: `${name}: nothing was brought in. ${read.problem}` }
}

/** Until the devices join again, the log calls them what they were called. */
async function rememberNames({ devices }: MeetingCopy): Promise<void> {
  const memory = await Memory.open()
  const called = Object.fromEntries(devices.map(({ id, name }) => [id, name]))
  await memory.rememberNames({ ...called, ...(await memory.names()) })
}
