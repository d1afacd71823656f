/** The demos: which seeds, and where on its clock a newcomer to each arrives. */
import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { DemoOf } from '@pitlamp/contract'
import { joinAsScreen } from './screen.ts'
import { openRace, type OpenRace } from './open-race.ts'
import { offsetMs, readScript } from './script.ts'

interface Demo {
  readonly folder: string
  readonly name: string
  /** Something happens within ten seconds. */
  readonly openAtMs: number
}

export const DEMOS: Readonly<Record<DemoOf, Demo>> = {
  digital: {
    folder: folderOf('three-forties'),
    name: 'Three Forties at the Old Ropeworks',
    /** Shortly before a stop window opens in the second segment. */
    openAtMs: offsetMs('0:59:30'),
  },
  lanes: {
    folder: folderOf('six-lanes'),
    name: 'Six Lanes at the Salt Store',
    /** Shortly before the draw. */
    openAtMs: offsetMs('-0:02:00'),
  },
}

export async function openDemo(at: {
  baseUrl: string
  code: string
  rate: number
  of: DemoOf
}): Promise<OpenRace> {
  const screen = await joinAsScreen(at.baseUrl, { code: at.code, name: 'Demo wall' })
  const { folder, name, openAtMs } = DEMOS[at.of]
  return openRace(screen, readScript(folder), { name, rate: at.rate, openAtMs })
}

/** Sources and bundle lie at different depths: the folder above this file that holds `seeds`. */
function folderOf(seed: string): string {
  let folder = dirname(fileURLToPath(import.meta.url))
  while (!existsSync(join(folder, 'seeds')) && folder !== dirname(folder)) folder = dirname(folder)
  return join(folder, 'seeds', seed)
}
