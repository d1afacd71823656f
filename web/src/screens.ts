/** Every screen by the name of its folder, each fetched on its own. */
import type { Component } from 'svelte'
import type { MeetingPort } from './meeting/port.ts'
import { RACE_SCREENS } from './routes.ts'

export type ScreenModule = { readonly default: Component<{ meeting?: MeetingPort }> }

const loaders = import.meta.glob<ScreenModule>('./screens/*/Screen.svelte')

export function loadScreen(name: string): Promise<ScreenModule> {
  const load = loaders[`./screens/${name}/Screen.svelte`]
  return load ? load() : Promise.reject(new Error(`There is no screen ${name}.`))
}

/** After first paint, so that every race screen and the log open when the server is gone. */
export function fetchAllForTheRace(): void {
  const later = 'requestIdleCallback' in globalThis ? requestIdleCallback : setTimeout
  later(() => {
    for (const name of [...RACE_SCREENS, 'log', 'check'])
      void loadScreen(name).catch(() => undefined)
    // What the stint's sheet needs: it weighs more than a race screen, so the wall does not bring it.
    void import('./screens/wall/stay-out-shown.ts').catch(() => undefined)
  })
}
