import type { TrayLine } from '@pitlamp/contract'
import { expect, it } from 'vitest'
import { trayGroups, whyNot } from './tray-groups.ts'

const id = (n: number) => `018f3a50-6a00-7000-8000-${String(n).padStart(12, '0')}`
const [tablet, phone, meeting, other] = [id(1), id(2), id(3), id(4)]
// 12:00:00 UTC is 13:00:00 in Dublin in summer.
const NOON = Date.UTC(2026, 5, 6, 12)

function line(n: number, more: Partial<TrayLine> & { body?: string; kind?: string }): TrayLine {
  const {
    body = '{}',
    kind = 'trackCall.1',
    device = tablet,
    meeting: of = meeting,
    decided,
  } = more
  const at = NOON + n * 1_000
  const entry = { v: 1, id: id(100 + n), device, n, at, atBoundMs: 0, epoch: 1, kind, body }
  const rest = { name: 'Wall tablet', role: 'pitWall', receivedAt: 0 } as const
  return {
    id: id(100 + n),
    meeting: of,
    device,
    ...rest,
    entry: more.entry ?? entry,
    ...(decided && { decided }),
  }
}
const namesOf = (of: string) => ({
  name: of === meeting ? 'Lantern Forty' : 'Another',
  timeZone: 'Europe/Dublin',
  nameOf: () => 'Ida Quill',
})

it('lists what each device kept of each meeting, in words and at the venue’s time', () => {
  const call = { kind: 'call.1', body: JSON.stringify({ person: id(9), words: 'Come in' }) }
  const lines = [
    line(2, call),
    line(1, {}),
    line(3, { device: phone }),
    line(4, { meeting: other }),
  ]
  const groups = trayGroups({ lines, namesOf, why: new Map() })
  expect(groups.map(({ device, of, lines: { length } }) => [device, of, length])).toEqual([
    [tablet, 'Lantern Forty', 2],
    [phone, 'Lantern Forty', 1],
    [tablet, 'Another', 1],
  ])
  expect(groups[0]?.lines.map(({ time, words }) => `${time} ${words}`)).toEqual([
    '13:00:01 Power is off',
    '13:00:02 To Ida Quill: Come in',
  ])
})

it('waits for a decision on what has none, and says why one was not taken', () => {
  const decided = { what: 'leftAside', at: 0 } as const
  const lines = [line(1, { decided }), line(2, {})]
  const why = new Map([[id(102), 'It cannot be read.']])
  const [group] = trayGroups({ lines, namesOf, why })
  expect(group?.waiting).toEqual([id(102)])
  expect(group?.lines).toMatchObject([{ decided: 'leftAside' }, { why: 'It cannot be read.' }])
})

it('shows what it cannot read as such', () => {
  const lines = [line(1, { body: 'no JSON' }), line(2, { entry: 'nonsense' })]
  const [group] = trayGroups({ lines, namesOf, why: new Map() })
  expect(group?.lines.map(({ words }) => words)).toEqual([
    'Something that cannot be read',
    'Something that cannot be read (trackCall.1)',
  ])
})

it('says why in words for the captain, and nothing of what was taken', () => {
  const refused = { outcome: 'refused', id: id(1), refusal: 'roleMayNot' } as const
  expect(whyNot(refused)).toBe('The device was not allowed to record that.')
  expect(whyNot({ ...refused, refusal: 'malformed', detail: 'words: too short' })).toBe(
    'It cannot be read. words: too short',
  )
  const saved = { id: id(1), seq: 1, recordedAt: 0, role: 'crew' } as const
  expect(whyNot({ outcome: 'duplicate', ...saved })).toBeUndefined()
})
