import { describe, expect, test } from 'vitest'
import { ROLES, type Role } from '../entry/envelope.ts'
import { kinds } from '../entry/kinds/index.ts'
import { id } from '../testing/ids.ts'
import { may, mayRecord, type Action } from './may.ts'

const recordable = (role: Role) =>
  Object.keys(kinds).filter((kind) => kind !== 'correction.1' && may(role, { do: 'record', kind }))
const all = Object.keys(kinds).filter((kind) => kind !== 'correction.1')
const correction = { kind: 'correction.1', body: { target: id(1) } }
const own = (target: string) => target === id(1)
const none = () => false

describe('what a role may record', () => {
  test('L34: viewers nothing, crew six kinds, the wall all but adoptions, captains everything', () => {
    expect(recordable('viewer')).toEqual([])
    expect(recordable('crew').sort()).toEqual([
      'answer.1',
      'faultNoted.1',
      'handover.1',
      'incident.1',
      'note.1',
      'photograph.1',
    ])
    expect(all.filter((kind) => !recordable('pitWall').includes(kind))).toEqual(['adopted.1'])
    expect(recordable('captain')).toEqual(all)
  })

  test('L34: a kind of a later build is a race kind', () => {
    const kind = 'wingBent.1'
    const mayIt = ROLES.filter((role) => may(role, { do: 'record', kind }))
    expect(mayIt).toEqual(['pitWall', 'captain'])
    expect(may('crew', { do: 'record', kind: 'note.2' })).toBe(true)
  })
})

test('L34: crew correct what their own device recorded, the wall anything, viewers nothing', () => {
  const ofOwn = ROLES.filter((role) => mayRecord(role, correction, own))
  const ofOthers = ROLES.filter((role) => mayRecord(role, correction, none))
  expect(ofOwn).toEqual(['crew', 'pitWall', 'captain'])
  expect(ofOthers).toEqual(['pitWall', 'captain'])
})

test('L34: a body is judged as text of the wire and as it is read, and not believed when broken', () => {
  const text = { kind: 'correction.1', body: JSON.stringify(correction.body) }
  expect(mayRecord('crew', text, own)).toBe(true)
  for (const body of ['{"target":', '7', undefined, { target: 7 }, null]) {
    expect(mayRecord('crew', { kind: 'correction.1', body }, () => true)).toBe(false)
  }
})

test('L34: crew take the wall where they are let, the wall and the captain take it back', () => {
  expect(ROLES.filter((role) => may(role, { do: 'takeWall' }))).toEqual(['crew'])
  expect(ROLES.filter((role) => may(role, { do: 'takeBackWall' }))).toEqual(['pitWall', 'captain'])
})

test('L34: the wall and the captain have rotations worked out', () => {
  expect(ROLES.filter((role) => may(role, { do: 'workOut' }))).toEqual(['pitWall', 'captain'])
})

test('L34: everybody reads, only the captain leads', () => {
  const leads: Action[] = [
    { do: 'invite' },
    { do: 'manageDevices' },
    { do: 'saveDraft' },
    { do: 'sharePlan' },
    { do: 'settleClock' },
    { do: 'makeMeeting' },
    { do: 'openDemo' },
  ]
  for (const action of leads) expect(ROLES.filter((role) => may(role, action))).toEqual(['captain'])
  expect(ROLES.filter((role) => may(role, { do: 'read' }))).toEqual([...ROLES])
})
