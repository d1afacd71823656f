/**
 * Two tablets see the same thing happen.
 *
 * T1  Both press it within ten seconds: one fact, and a second witness that the log shows and that can be
 *     split off again.
 * T2  Pressed again later than that it is listed as something that does not add up.
 */
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { enterMeeting } from './lantern-forty.ts'
import { banner, House, more, verb } from './screens.ts'

let house: House
beforeEach(async () => {
  house = await House.open()
})
afterEach(async () => {
  await house.close()
  expect(house.complaints).toEqual([])
})

it('T1 what two press within ten seconds is one fact with a second witness', async () => {
  const { near, far, network } = await twoWalls(1)
  // So that neither sees the other's press and keeps its own back.
  network.cut = true
  await Promise.all([verb(near, 'Power is off').click(), verb(far, 'Power is off').click()])
  network.cut = false
  await far.getByText('all saved').waitFor({ timeout: 40_000 })

  await more(near, 'Log', 'link')
  const offs = near.getByRole('listitem').filter({ hasText: 'Power is off' })
  const witness = offs.filter({ hasText: 'second witness of' })
  await witness.waitFor()
  expect(await offs.count()).toBe(2)
  expect(await near.getByText('Does not add up').count()).toBe(0)

  await witness.click()
  await near.getByRole('button', { name: 'It is something else' }).click()
  await near.getByText('Does not add up: 1').waitFor()
})

it('T2 what a tablet without network presses later than that is listed', async () => {
  // Four times as fast as life: ten seconds are over in two and a half.
  const { near, far, network } = await twoWalls(4)
  network.cut = true
  await verb(near, 'Power is off').click()
  await banner(near).getByText('Power off').waitFor()
  await near.waitForTimeout(3_000)
  await verb(far, 'Power is off').click()
  await far.getByText('1 kept on this device').waitFor()
  network.cut = false
  // A connection that was begun while the network was cut is given up after twenty seconds.
  await far.getByText('all saved').waitFor({ timeout: 40_000 })

  await more(near, 'Log', 'link')
  await near.getByText('Does not add up: 1').waitFor()
  const offs = near.getByRole('listitem').filter({ hasText: 'Power is off' })
  expect(await offs.filter({ hasText: 'second witness' }).count()).toBe(0)
})

interface Walls {
  readonly near: Page
  readonly far: Page
  /** The far one's way to the server. */
  readonly network: { cut: boolean }
}

async function twoWalls(rate: number): Promise<Walls> {
  const options = { minutesAfterGreen: 5, fictional: { rate } }
  const meeting = await enterMeeting(await house.captain(), options)
  const near = await house.screen('pitWall', 'Wall A')
  const far = await house.screen('pitWall', 'Wall B')
  const network = await networkOf(far)
  for (const wall of [near, far]) {
    await wall.goto(meeting.path('wall'))
    await verb(wall, 'Power is off').waitFor()
    await wall.getByText('clock set').waitFor()
  }
  return { near, far, network }
}

/** Everything between this page and the server goes through here, and nowhere while it is cut. */
async function networkOf(page: Page): Promise<{ cut: boolean }> {
  const network = { cut: false }
  await page.routeWebSocket(/socket\.io/, (socket) => {
    const server = socket.connectToServer()
    socket.onMessage((message) => {
      if (!network.cut) server.send(message)
    })
    server.onMessage((message) => {
      if (!network.cut) socket.send(message)
    })
  })
  return network
}
