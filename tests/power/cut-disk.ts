/** A data folder on a disk whose power can be cut: see synced-only.c for what it keeps. */
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

export interface CutDisk {
  readonly data: string
  /** What the preloaded library must know. */
  readonly env: Readonly<Record<string, string>>
  /** Once the process is dead: the folder becomes what was synced. */
  readonly cut: () => void
  readonly remove: () => void
}

export function newCutDisk(): CutDisk {
  const data = mkdtempSync(join(tmpdir(), 'pitlamp-data-'))
  const keep = mkdtempSync(join(tmpdir(), 'pitlamp-kept-'))
  return {
    data,
    env: { SYNCED_ONLY_DATA: data, SYNCED_ONLY_KEEP: keep },
    cut: () => {
      const synced = readSynced(keep)
      empty(data)
      for (const { name, copy } of synced) {
        // A name that was synced without any bytes is an empty file.
        if (copy === undefined) writeFileSync(join(data, name), '')
        else copyFileSync(copy, join(data, name))
      }
      empty(keep)
      keepAsItIs(data, keep)
    },
    remove: () => [data, keep].forEach((folder) => rmSync(folder, { recursive: true })),
  }
}

function readSynced(keep: string): { name: string; copy: string | undefined }[] {
  const names = join(keep, 'names')
  if (!existsSync(names)) return []
  return readFileSync(names, 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => {
      const copy = join(keep, line.slice(0, line.indexOf(' ')))
      return { name: line.slice(line.indexOf(' ') + 1), copy: existsSync(copy) ? copy : undefined }
    })
}

/** After a cut, what is on the disk is synced: the same keys as synced-only.c makes. */
function keepAsItIs(data: string, keep: string): void {
  const lines = readdirSync(data).map((name) => {
    const { ino, birthtimeNs } = statSync(join(data, name), { bigint: true })
    const key = `${ino}-${birthtimeNs}`
    copyFileSync(join(data, name), join(keep, key))
    return `${key} ${name}\n`
  })
  writeFileSync(join(keep, 'names'), lines.join(''))
}

function empty(folder: string): void {
  rmSync(folder, { recursive: true })
  mkdirSync(folder)
}
