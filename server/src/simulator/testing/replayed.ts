/** A seed folded without a server, as it stands at any time after its first green. */
import { ENVELOPE_VERSION, fold, readEntry, type LogEntry, type State } from '@pitlamp/race'
import { offsetMs, readScript, type Script } from '../script.ts'

const GREEN = 1_800_000_000_000

interface Replayed {
  readonly script: Script
  readonly entries: readonly LogEntry[]
  /** `0:10:00` after the first green, in meeting time. */
  readonly atOf: (time: string) => number
  readonly stateAt: (time: string) => State
}

export function replayed(folder: string): Replayed {
  const script = readScript(folder)
  const atOf = (time: string) => GREEN + offsetMs(time)
  const entries = entriesOf(script)
  return {
    ...{ script, entries, atOf },
    stateAt: (time) => fold(entries.filter(({ at }) => at <= atOf(time))),
  }
}

const id = (n: number) => `018f3a50-6a00-7000-8000-${String(n).padStart(12, '0')}`

/** The documents are adopted with the first press. */
function entriesOf({ documents, presses }: Script): readonly LogEntry[] {
  const adopted = documents.map(({ name, content }) => ({
    ...{ offsetMs: presses[0]?.offsetMs ?? 0, kind: 'adopted.1' },
    body: {
      ...{ document: name, version: 1, sha256: '0'.repeat(64), content, as: 'change' },
      appliesFrom: GREEN - 3_600_000,
    },
  }))
  const named = (text: string) =>
    text.replace(/"\$(\w+)"/g, (_, name: string) => {
      const place = presses.findIndex((press) => press.as === name)
      return `"${id(1_001 + documents.length + place)}"`
    })
  return [...adopted, ...presses].map(({ offsetMs, kind, body }, index) =>
    readEntry({
      ...{ v: ENVELOPE_VERSION, id: id(1_001 + index), device: id(1), n: index + 1 },
      ...{ at: GREEN + offsetMs, atBoundMs: 0, epoch: 1, kind, body: named(JSON.stringify(body)) },
    }),
  )
}
