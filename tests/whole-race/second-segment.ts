/** Parc fermé, the wall in a phone's hands, a tablet that was cut off, and a stop left early that costs laps. */
import { between, faultClocks, penalties, standing } from '@pitlamp/race'
import { expect } from 'vitest'
import { PELL, RUNA, SORREL } from './documents.ts'
import { at, type Race } from '../scripted-race.ts'
import { lastVerdict, swap } from './reading.ts'
import type { Variant } from './variants.ts'

export async function parcFerme(race: Race, { ends }: Variant): Promise<void> {
  const { wall, captain, phone } = race
  const said = { quantity: 'Clearance', unit: 'mm', valueMilli: 1_200 } as const
  await race.say(ends[0] + 60, [wall, 'measured.1', said])
  const state = await race.state()
  expect(between(state, at(ends[0] + 100))).toMatchObject({
    kind: 'parcFerme',
    since: at(ends[0]),
    // Ten minutes of break.
    nextAt: at(ends[0] + 600),
    hands: { allowed: false, clause: '6.3' },
    measurements: [{ body: { valueMilli: 1_200 } }],
  })

  // M4: the captain lets the phone, and the phone takes the wall.
  const device = `/api/devices/${phone.device.id}`
  await captain.call('PATCH', device, { mayTakeWallIn: race.meeting })
  await phone.device.call('POST', `/api/meetings/${race.meeting}/wall/take`, {})
  const moves = [
    { person: RUNA, duty: 'post' as const, post: '4' },
    { person: SORREL, duty: 'wall' as const },
  ]
  await race.say(1_980, [phone, 'handover.1', { moves }])
  const green = await race.say(2_000, [phone, 'green.1', { segment: 's2' }])
  const line = (await race.state()).record.log.find(({ entry }) => entry.id === green.id)
  expect(line).toMatchObject({ standing: 'holds', role: 'pitWall' })
}

/** @returns what the tablet pressed while it was cut off */
export async function secondSegment(
  race: Race,
  { ends, right }: Variant,
): Promise<readonly string[]> {
  const { wall, phone } = race
  wall.cutOff()
  await wall.until('to be cut off', ({ connected }) => !connected)
  const braid = (await race.say(2_200, [phone, 'faultNoted.1', { fault: 'Braid' }])).id
  const off = wall.press('trackCall.1', {}, at(2_400))
  const on = wall.press('powerOn.1', {}, at(2_425))
  expect([off, on].map((entry) => wall.saved(entry))).not.toContain('saved')

  await race.say(2_590, [phone, 'stopIn.1', { moment: 'stopped', planned: 's2stop' }])
  await race.say(2_600, [phone, 'repairStarted.1', { fault: braid }])
  const work = [{ what: 'Braid', fault: braid, done: true }]
  await race.say(2_647, [
    phone,
    'stopOut.1',
    { moment: 'leaving', work, moves: swap(SORREL, PELL) },
  ])
  const state = await race.state()
  // 57 of 60 s: three laps, one for each second.
  expect(lastVerdict(state)).toMatchObject({
    verdict: 'early',
    byMs: -3_000,
    costs: [{ rule: 'early', clause: '7.1', is: 'laps', total: 3 }],
  })
  expect(faultClocks(state, at(2_700))[0]).toMatchObject({
    fault: { entry: braid, ended: { how: 'mended', at: at(2_647) } },
    // 2,600 to 2,647.
    repairMs: 47_000,
    runningWithMs: right.braid[0] * 1_000,
  })
  await penalised(race)
  await race.say(ends[1], [phone, 'segmentEnd.1', { segment: 's2' }])
  return [off.id, on.id]
}

/** M5: read off the venue's screen, then three laps taken, and the order turned round. */
async function penalised(race: Race): Promise<void> {
  const { captains } = race
  const lines = [
    { place: 1, entrant: 'Lantern Row', laps: 262, ours: true },
    { place: 2, entrant: 'North Shed', laps: 260 },
  ]
  const shown = { standing: 'provisional', scope: 'segment', segment: 's2', lines } as const
  await race.say(2_680, [captains, 'classification.1', shown])
  const penalty = { what: 'laps', laps: 3, scope: 'race', words: 'Stop left 3 s early' } as const
  await race.say(2_700, [captains, 'penalty.1', penalty])
  const state = await race.state()
  expect(penalties(state, at(2_710))).toMatchObject([{ status: 'standing' }])
  expect(standing(state, at(2_710))).toMatchObject({
    place: 1,
    shown: { laps: 262 },
    ours: { laps: 259 },
    since: { penaltyLaps: 3 },
    behind: { entrant: 'North Shed', gap: { laps: -1 } },
  })
}

/** M3: the tablet comes back after the segment is over. */
export async function theLateEntry(
  race: Race,
  { right }: Variant,
  late: readonly string[],
): Promise<void> {
  const { wall, phone } = race
  expect((await race.state()).raceControl.interruptions).toHaveLength(3)
  wall.reconnect()
  await phone.until('what the tablet kept', ({ sync }) =>
    late.every((id) => sync.confirmed.some((entry) => entry.id === id)),
  )
  await wall.until('to be back', ({ connected }) => connected)
  const state = await race.state()
  expect(state.raceControl.interruptions.at(-1)).toMatchObject({
    fromAt: at(2_400),
    toAt: at(2_425),
  })
  const braid = faultClocks(state, at(3_300)).find(({ fault }) => fault.fault === 'Braid')
  expect(braid?.runningWithMs).toBe(right.braid[1] * 1_000)

  // M4: the wall is asked back, and the phone is a phone again.
  const path = `/api/meetings/${race.meeting}/wall/take-back`
  await wall.device.call('POST', path, { device: phone.device.id })
  const refused = phone.press('segmentEnd.1', { segment: 's2' }, at(3_310))
  await phone.until('to be refused', (screen) => screen.saved(refused) === 'refused')
}
