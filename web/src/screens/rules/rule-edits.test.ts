import { regulationsSchema, RULE_KINDS, partsOf, type Regulations } from '@pitlamp/race'
import { describe, expect, it } from 'vitest'
import {
  addRule,
  categoriesIn,
  firstValue,
  kindsOffered,
  likeliestKind,
  partName,
  partOf,
  setPart,
} from './rule-edits.ts'

const empty = (): Regulations => ({
  ...{ name: 'Six hours', timeZone: 'Europe/Dublin' },
  ...{ programme: [], rules: [] },
})

describe('a rule', () => {
  it('is added as its kind begins, under an id nobody has or may get back', () => {
    const rules = empty()
    const first = addRule(rules, 'drivingTime')
    const second = addRule(rules, 'drivingTime', [{ id: 'r2' }])
    expect([first, second]).toEqual(['r1', 'r3'])
    rules.rules.slice(0, 1).forEach((rule) => setPart(rule, 'atLeastMs', 4_500_000))
    expect(rules.rules.map((rule) => partOf(rule, 'atLeastMs'))).toEqual([4_500_000, 'notKnownYet'])
  })

  it('says a part and leaves it out again', () => {
    const rules = empty()
    addRule(rules, 'driverRest')
    const shares = () => rules.rules.map((rule) => partOf(rule, 'shareOfStint'))
    for (const rule of rules.rules) setPart(rule, 'shareOfStint', 500)
    expect(shares()).toEqual([500])
    for (const rule of rules.rules) setPart(rule, 'shareOfStint', undefined)
    expect(shares()).toEqual([undefined])
  })

  it.each(RULE_KINDS.map(({ kind }) => kind))('of kind %s may say all it can', (kind) => {
    const rules = empty()
    addRule(rules, kind)
    for (const [name, part] of Object.entries(partsOf(kind)).filter(([, part]) => part.optional)) {
      for (const rule of rules.rules) setPart(rule, name, firstValue(part, ['junior']))
    }
    expect(regulationsSchema.safeParse(rules).error?.issues).toBeUndefined()
  })
})

describe('the kinds of rule', () => {
  const found = (sought: string) =>
    kindsOffered(sought).flatMap(({ kinds }) => kinds.map(({ kind }) => kind))

  it('are all offered, each once', () => {
    expect(found('').sort()).toEqual(RULE_KINDS.map(({ kind }) => kind).sort())
  })

  it('are found by name, by what they say, and by all words typed', () => {
    expect(found('rest ')).toContain('driverRest')
    expect(found('WHEELS')).toEqual(['stopMinimum'])
    expect(found('marshal shift')).toEqual(['marshalShift'])
    expect(found('no such thing')).toEqual([])
  })

  it('are taken by their name first', () => {
    expect(likeliestKind('number of drivers')).toBe('numberOfDrivers')
    expect(['rest', 'resta'].map(likeliestKind)).toEqual(['driverRest', 'restart'])
    expect(likeliestKind('wheels')).toBe('stopMinimum')
    expect(likeliestKind('no such thing')).toBeUndefined()
  })

  it('are shown with gaps for their values', () => {
    const drivers = kindsOffered()
      .flatMap(({ kinds }) => kinds)
      .find(({ kind }) => kind === 'numberOfDrivers')
    expect(drivers?.reads).toBe('At least … at most … drivers drive in the race.')
  })
})

it('calls parts by words', () => {
  expect(['atLeastMs', 'shareOfStint', 'of'].map(partName)).toEqual([
    ...['at least', 'share of stint', 'of'],
  ])
})

it('lists the categories that the rules name, each once', () => {
  const rules = empty()
  addRule(rules, 'followingDrivers')
  addRule(rules, 'mayNotDo')
  // After a novice no novice; a captain may not drive.
  expect(categoriesIn(rules)).toEqual(['novice', 'captain'])
})
