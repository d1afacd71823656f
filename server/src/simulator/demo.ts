/** The demo: which seed, and where on its clock a newcomer arrives. */
import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { joinAsScreen } from './screen.ts'
import { openRace, type OpenRace } from './open-race.ts'
import { offsetMs, readScript } from './script.ts'

export const DEMO = {
  folder: join(projectFolder(), 'seeds', 'three-forties'),
  name: 'Three Forties at the Old Ropeworks',
  /** Shortly before a stop window opens in the second segment: something happens within ten seconds. */
  openAtMs: offsetMs('0:59:30'),
}

export async function openDemo(at: {
  baseUrl: string
  code: string
  rate: number
}): Promise<OpenRace> {
  const screen = await joinAsScreen(at.baseUrl, { code: at.code, name: 'Demo wall' })
  return openRace(screen, readScript(DEMO.folder), {
    name: DEMO.name,
    rate: at.rate,
    openAtMs: DEMO.openAtMs,
  })
}

/** Sources and bundle lie at different depths: the folder above this file that holds `seeds`. */
function projectFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url))
  while (!existsSync(join(folder, 'seeds')) && folder !== dirname(folder)) folder = dirname(folder)
  return folder
}
