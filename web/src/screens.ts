/** Every screen by the name of its folder, each fetched on its own. */
import type { Component } from 'svelte'
import type { MeetingPort } from './meeting/port.ts'
import { RACE_SCREENS } from './routes.ts'
import { fetchLaneChange } from './screens/lane-change/after-first.ts'
import {
  fetchLastStop,
  fetchSheets,
  fetchStanding,
  fetchStayOut,
} from './screens/wall/after-first.ts'

export type ScreenModule = { readonly default: Component<{ meeting?: MeetingPort }> }

const loaders = import.meta.glob<ScreenModule>('./screens/*/Screen.svelte')

export function loadScreen(name: string): Promise<ScreenModule> {
  const load = loaders[`./screens/${name}/Screen.svelte`]
  return load ? load() : Promise.reject(new Error(`There is no screen ${name}.`))
}

const LATER = [fetchSheets, fetchLastStop, fetchStanding, fetchStayOut, fetchLaneChange]

/** After first paint, so that every race screen and the log open when the server is gone. */
export function fetchAllForTheRace(): void {
  const later = 'requestIdleCallback' in globalThis ? requestIdleCallback : setTimeout
  later(() => {
    for (const name of [...RACE_SCREENS, 'log', 'results', 'check'])
      void loadScreen(name).catch(() => undefined)
    for (const fetch of LATER) void fetch().catch(() => undefined)
  })
}
