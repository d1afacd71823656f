/**
 * Each device numbers its entries 1, 2, 3 … A number that comes again betrays a repeated entry; a number that
 * is missing below a recorded one betrays an entry still on that device.
 */
import type { LogEntry } from '../entry/read.ts'
import { entriesAre, type Problems } from './problems.ts'

interface Device {
  readonly id: string
  last: number
  /** Whether its numbers arrived rising, as they do: then nothing is repeated. */
  rising: boolean
  recorded: number
  highest: number
}

/** Counts entries as they come; asked at the end whether one may have come twice, and what is missing. */
export class Numbers {
  private readonly devices = new Map<string, Device>()
  private device: Device | undefined

  /** A device's entries come in runs: it is looked up once a run. */
  add({ device: id, n, seq }: LogEntry): void {
    let { device } = this
    if (device?.id !== id) {
      device = this.devices.get(id)
      if (!device) {
        device = { id, last: 0, rising: true, recorded: 0, highest: 0 }
        this.devices.set(id, device)
      }
      this.device = device
    }
    if (n <= device.last) device.rising = false
    device.last = n
    if (seq === undefined) return
    device.recorded += 1
    if (n > device.highest) device.highest = n
  }

  get areRising(): boolean {
    for (const device of this.devices.values()) if (!device.rising) return false
    return true
  }

  /** Of entries that are each there once. In the order of device ids. */
  listGaps(entries: readonly LogEntry[], problems: Problems): void {
    const devices = [...this.devices.values()].sort((a, b) => (a.id < b.id ? -1 : 1))
    for (const { id, rising, highest, recorded } of devices) {
      if (!rising || highest > recorded) listGaps(id, entries, problems)
    }
  }
}

/** Every entry once, the recorded copy where there are two. */
export function firstOfEach(entries: readonly LogEntry[]): readonly LogEntry[] {
  const byId = new Map<string, LogEntry>()
  for (const entry of entries) {
    const known = byId.get(entry.id)
    if (!known || (known.seq === undefined && entry.seq !== undefined)) byId.set(entry.id, entry)
  }
  return [...byId.values()]
}

function listGaps(device: string, entries: readonly LogEntry[], problems: Problems): void {
  const recorded = entries.filter((entry) => entry.device === device && entry.seq !== undefined)
  recorded.sort((a, b) => a.n - b.n || (a.id < b.id ? -1 : 1))
  let missing = 0
  let last = 0
  const after: string[] = []
  for (const entry of recorded) {
    if (entry.n > last + 1) {
      missing += entry.n - last - 1
      after.push(entry.id)
    }
    last = entry.n
  }
  if (missing === 0) return
  problems.push({
    kind: 'numbersMissing',
    entries: after,
    sentence: `${entriesAre(missing)} still on the device that recorded what follows.`,
  })
}
