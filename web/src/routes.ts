/** Which address shows what. Pure; `router.ts` follows the browser's history with it. */

export const RACE_SCREENS = ['wall', 'stop', 'driver', 'marshal', 'between', 'finish'] as const
export const TEAM_SCREENS = [
  ...(['rules', 'crew', 'rotation', 'car', 'log', 'results', 'team', 'check'] as const),
] as const
export type RaceScreen = (typeof RACE_SCREENS)[number]
export type MeetingScreen = RaceScreen | (typeof TEAM_SCREENS)[number]

export type Route =
  | { readonly screen: 'meetings' }
  | { readonly screen: 'join' }
  | { readonly screen: 'plan' }
  | { readonly screen: MeetingScreen; readonly meeting: string }
  | { readonly screen: 'unknown' }

const MEETING_PATH = /^\/meetings\/([0-9a-f-]{36})\/([a-z]+)\/?$/

export function routeOf(path: string): Route {
  if (path === '/') return { screen: 'meetings' }
  if (path === '/join') return { screen: 'join' }
  if (path === '/plan') return { screen: 'plan' }
  const [, meeting, name] = MEETING_PATH.exec(path) ?? []
  const screen = [...RACE_SCREENS, ...TEAM_SCREENS].find((screen) => screen === name)
  return meeting === undefined || screen === undefined ? { screen: 'unknown' } : { screen, meeting }
}

export function pathTo(meeting: string, screen: MeetingScreen): string {
  return `/meetings/${meeting}/${screen}`
}

export function isRaceScreen(screen: Route['screen']): screen is RaceScreen {
  return RACE_SCREENS.some((name) => name === screen)
}
