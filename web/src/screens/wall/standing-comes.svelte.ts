/** What puts the standing into words, one for all screens that have the wall's header. */
import type { MeetingPort } from '../../meeting/port.ts'
import { Fetched } from '../../parts/fetched.svelte.ts'
import { fetchStanding } from './after-first.ts'

export const standingComes = new Fetched(fetchStanding)

/** Called from an effect: asks the network; where it did not come, again with each classification. */
export function fetchStandingFor({ state }: MeetingPort): void {
  if (state.raceControl.classifications.length > 0 || !standingComes.missing)
    void standingComes.load()
}
