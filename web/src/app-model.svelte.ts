/** Follows the address: fetches the screen, opens its meeting, and says so where either cannot be had. */
import type { Failure } from './api/ask.ts'
import type { Hearing } from './meeting/due-alerts.ts'
import type { Meeting } from './meeting/meeting.svelte.ts'
import { openMeeting } from './meeting/open.ts'
import { keepAwake } from './meeting/wake-lock.ts'
import { router } from './router.ts'
import { isRaceScreen, type MeetingScreen, type Route } from './routes.ts'
import { fetchAllForTheRace, loadScreen, type ScreenModule } from './screens.ts'

type View =
  | { readonly what: 'opening' }
  | {
      readonly what: 'screen'
      readonly Screen: ScreenModule['default']
      readonly meeting?: Meeting
    }
  | { readonly what: 'failed'; readonly sentence: string }

const HEARS: Partial<Record<MeetingScreen, Hearing>> = {
  wall: 'all',
  stop: 'all',
  between: 'all',
  finish: 'all',
  marshal: 'relief',
}
const NAMES: Readonly<Record<Exclude<Route['screen'], 'unknown'>, string>> = {
  meetings: 'Meetings',
  join: 'Join',
  plan: 'Plan',
  rules: 'Rules',
  crew: 'Crew',
  rotation: 'Rotation',
  car: 'Car',
  team: 'Team',
  log: 'Log',
  results: 'Results',
  check: 'Check this device',
  wall: 'Pit wall',
  stop: 'Stop',
  between: 'Between segments',
  finish: 'After the flag',
  driver: 'Driver',
  marshal: 'Marshal',
}
const LOG_WITHIN_REAL_MS = 3_000
const NO_SCREEN =
  'This screen is not on this device yet and the server does not answer. Try again when it is back.'
const NO_PAGE = 'There is nothing at this address.'

export class AppModel {
  view = $state.raw<View>({ what: 'opening' })
  #meeting: Meeting | undefined
  #showing = 0
  #letSleep = () => {}

  constructor() {
    router.follow((route) => void this.show(route))
  }

  async show(route: Route): Promise<void> {
    const showing = (this.#showing += 1)
    if (route.screen === 'unknown') {
      this.#fail(NO_PAGE)
      return
    }
    const loading = loadScreen(route.screen).catch(() => undefined)
    const opened = 'meeting' in route ? await this.#open(route.meeting) : undefined
    if (opened === undefined) this.#close()
    const module = await loading
    if (showing !== this.#showing) return
    if (opened && 'failed' in opened) this.#cannotOpen(opened.failed)
    else if (!module) this.#fail(NO_SCREEN)
    else {
      this.#settle(route, opened?.meeting)
      this.view = { what: 'screen', Screen: module.default, meeting: opened?.meeting }
      fetchAllForTheRace()
    }
  }

  retry(): void {
    void this.show(router.route)
  }

  #settle(route: Exclude<Route, { screen: 'unknown' }>, meeting: Meeting | undefined): void {
    const name = NAMES[route.screen]
    document.title = meeting ? `${name} · ${meeting.name}` : `${name} · Pitlamp`
    if ('meeting' in route) meeting?.hears(HEARS[route.screen] ?? 'own')
    this.#letSleep()
    this.#letSleep = isRaceScreen(route.screen) ? keepAwake() : () => {}
  }

  async #open(id: string): Promise<{ meeting: Meeting } | { failed: Failure }> {
    if (this.#meeting?.id === id) return { meeting: this.#meeting }
    this.#close()
    const opened = await openMeeting(id)
    if ('failed' in opened) return opened
    this.#meeting = opened.meeting
    void opened.meeting.open()
    await logIsHere(opened.meeting)
    return opened
  }

  #close(): void {
    this.#meeting?.close()
    this.#meeting = undefined
  }

  #cannotOpen(failed: Failure): void {
    if (failed.refusal === 'notJoined' || failed.refusal === 'revoked')
      router.go('/join', 'replace')
    else this.#fail(failed.sentence)
  }

  #fail(sentence: string): void {
    this.view = { what: 'failed', sentence }
  }
}

/** Half a log shows a race that has not begun. Where it does not come, what is here is shown. */
async function logIsHere(meeting: Meeting): Promise<void> {
  const latest = performance.now() + LOG_WITHIN_REAL_MS
  while (meeting.isBehind && performance.now() < latest) {
    await new Promise((done) => setTimeout(done, 30))
  }
}
