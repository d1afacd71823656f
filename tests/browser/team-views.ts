/** The team's devices as they look: who is in, what they kept, a phone that has the wall. */
import { v7 as uuidV7 } from 'uuid'
import { enterMeeting } from './lantern-forty.ts'
import type { House } from './screens.ts'
import { showing, text, type View } from './view.ts'

/** A tablet was taken out and has handed over what it kept; two phones are in the team. */
async function lostTablet(house: House): ReturnType<View['open']> {
  const captain = await house.captain()
  const meeting = await enterMeeting(captain, { minutesAfterGreen: 3 })
  const lost = await captain.invite('pitWall', 'Lost tablet')
  await captain.invite('crew', 'Ida’s phone')
  const watched = await captain.invite('crew', 'Phone by the lamp')
  await captain.call('PATCH', `/api/devices/${watched.id}`, { mayTakeWallIn: meeting.id })
  await captain.call('PATCH', `/api/devices/${lost.id}`, { revoked: true })
  const entries = ['trackCall.1', 'powerOn.1'].map((kind, index) => ({
    ...{ v: 1, id: uuidV7(), device: lost.id, n: index + 1, kind, body: '{}' },
    ...{ at: Date.now(), atBoundMs: 20, epoch: 1 },
  }))
  const body = { meeting: meeting.id, entries }
  await lost.call('POST', `/api/meetings/${meeting.id}/entries`, body)
  return { page: await house.screen('captain', 'Laptop'), path: meeting.path('team') }
}

async function wallOnPhone(house: House): ReturnType<View['open']> {
  const captain = await house.captain()
  const meeting = await enterMeeting(captain, { minutesAfterGreen: 3 })
  const phone = await captain.invite('crew', 'Ida’s phone')
  await captain.call('PATCH', `/api/devices/${phone.id}`, { mayTakeWallIn: meeting.id })
  await phone.call('POST', `/api/meetings/${meeting.id}/wall/take`, {})
  return { page: await house.screen('pitWall', 'Wall tablet'), path: meeting.path('wall') }
}

export const TEAM_VIEWS: readonly View[] = [
  {
    name: 'team',
    lit: 'none',
    open: showing({ screen: 'team', role: 'captain' }),
    ready: async (page) => {
      await page.getByRole('img', { name: /Code to scan/ }).waitFor()
      await page.getByRole('button', { name: 'A code to read out' }).click()
      await page.getByText('within ten minutes').waitFor()
      await page.getByRole('listitem').filter({ hasText: 'this device' }).waitFor()
    },
  },
  {
    name: 'team, the tray',
    lit: 'none',
    open: lostTablet,
    ready: async (page) => {
      await page.getByRole('img', { name: /Code to scan/ }).waitFor()
      await page.getByRole('button', { name: /^Take all 2/ }).waitFor()
      await page.getByRole('button', { name: 'Take out Ida’s phone' }).click()
      await page.getByRole('button', { name: 'Keep Ida’s phone' }).waitFor()
    },
  },
  {
    name: 'check',
    lit: 'none',
    open: showing({ screen: 'check', role: 'crew', minutes: 3 }),
    ready: async (page) => {
      await page.getByRole('button', { name: 'Play a tone' }).click()
      await page.getByRole('button', { name: 'Heard it' }).waitFor()
    },
  },
  {
    name: 'wall, also on a phone',
    lit: 'none',
    open: wallOnPhone,
    ready: text('Wall is also on'),
  },
]
