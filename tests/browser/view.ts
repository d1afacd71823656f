/** What a view is, and how most of them come about. */
import type { Page } from 'playwright-core'
import type { Role } from '@pitlamp/race'
import { enterMeeting, type EnteredMeeting } from './lantern-forty.ts'
import type { House } from './screens.ts'

export type Wanted = 'none' | 'one'

export interface View {
  readonly name: string
  /** How many parts have the lamp. */
  readonly lit: Wanted
  readonly open: (house: House) => Promise<{ page: Page; path: string }>
  /** Until everything that is to be looked at is there. */
  readonly ready: (page: Page) => Promise<unknown>
}

export type Happens = (meeting: EnteredMeeting) => Promise<unknown>

interface Showing {
  readonly screen: string
  readonly role?: Role
  /** Of the first segment's forty; without it the race has not begun. */
  readonly minutes?: number
  readonly happens?: Happens
}

export function showing({ screen, role = 'pitWall', minutes, happens }: Showing): View['open'] {
  return async (house) => {
    const meeting = await enterMeeting(await house.captain(), { minutesAfterGreen: minutes })
    await happens?.(meeting)
    return { page: await house.screen(role, 'Wall tablet'), path: meeting.path(screen) }
  }
}

/** Until these words are there. */
export function text(words: string | RegExp): View['ready'] {
  return (page) => page.getByText(words).first().waitFor()
}
