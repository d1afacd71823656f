import type { CrewMember } from '@pitlamp/race'
import { describe, expect, it } from 'vitest'
import {
  addCategory,
  addPresence,
  canTake,
  readLapTime,
  setRest,
  setRestEnd,
  setPresence,
  takeCategory,
  takePresence,
  turnDuty,
  writeLapTime,
} from './crew-edits.ts'

const person = (more: Partial<CrewMember> = {}): CrewMember => ({
  ...{ id: '018f3a50-6a00-7000-8000-00000000a001', name: 'Solveig', duties: [] },
  ...more,
})

describe('duties', () => {
  it('are all of them where none is named', () => {
    const solveig = person()
    expect(canTake(solveig, 'bench')).toBe(true)
    turnDuty(solveig, 'bench')
    expect(solveig.duties).toEqual(['controller', 'post', 'wall'])
  })

  it('are none for somebody who can take none', () => {
    const solveig = person({ duties: ['wall'] })
    turnDuty(solveig, 'wall')
    expect(solveig.duties).toEqual(['offDuty'])
    expect(canTake(solveig, 'wall')).toBe(false)
    turnDuty(solveig, 'post')
    expect(solveig.duties).toEqual(['post'])
  })
})

describe('a rest without a break', () => {
  it('keeps its ends when its length changes, and goes whole', () => {
    const solveig = person()
    setRestEnd(solveig, 'toAt', 5)
    expect(solveig.restBlock).toBeUndefined()
    setRest(solveig, 21_600_000)
    setRestEnd(solveig, 'fromAt', 1_000)
    setRest(solveig, 18_000_000)
    expect(solveig.restBlock).toEqual({ atLeastMs: 18_000_000, fromAt: 1_000 })
    setRest(solveig, undefined)
    expect(solveig.restBlock).toBeUndefined()
  })
})

describe('categories', () => {
  it('are added once and taken away', () => {
    const solveig = person()
    addCategory(solveig, ' novice ')
    addCategory(solveig, 'novice')
    addCategory(solveig, '')
    expect(solveig.categories).toEqual(['novice'])
    takeCategory(solveig, 'novice')
    expect(solveig.categories).toBeUndefined()
  })
})

describe('presence', () => {
  it('is open at an end nobody has said', () => {
    const solveig = person()
    addPresence(solveig)
    addPresence(solveig)
    for (const presence of solveig.there?.slice(1) ?? []) {
      setPresence(presence, 'fromAt', 5_000)
      setPresence(presence, 'toAt', 9_000)
      setPresence(presence, 'toAt', undefined)
    }
    expect(solveig.there).toEqual([{ id: 't1' }, { id: 't2', fromAt: 5_000 }])
  })

  it('is all the time again once the last stretch is taken out', () => {
    const solveig = person({ there: [{ id: 't1', fromAt: 5_000 }] })
    takePresence(solveig, 't1')
    expect(solveig.there).toBeUndefined()
  })
})

it('reads lap times to the millisecond', () => {
  expect(['8.42 s', '8,4', '1:02.505', '12', 'fast', '700'].map(readLapTime)).toEqual([
    ...[8_420, 8_400, 62_505, 12_000, undefined, undefined],
  ])
  expect([8_420, 8_425, 12_000].map(writeLapTime)).toEqual(['8.42 s', '8.425 s', '12.00 s'])
})
