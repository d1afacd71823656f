/** What may happen in a turn, and how schedules of it are drawn. */
import fc from 'fast-check'
import type { PressKind } from './presses.ts'

export type Turn =
  | { readonly do: 'press'; readonly screen: number; readonly kind: PressKind }
  | { readonly do: 'connect' | 'disconnect' | 'reload' | 'store'; readonly screen: number }
  | { readonly do: 'wait' | 'giveUpWaiting' | 'sendAgain'; readonly screen: number }
  | { readonly do: 'deliver' | 'lose' | 'repeat'; readonly pick: number }
  /** Calm: everything under way arrives, in order. */
  | { readonly do: 'calm' | 'restart' | 'diskFails' | 'diskWorks' | 'copy' | 'putBack' }
  | { readonly do: 'role'; readonly screen: number; readonly role: 'crew' | 'pitWall' }

export interface Schedule {
  readonly turns: readonly Turn[]
  /**
   * Everybody connects anew at the end; or whoever is connected stays so and hears of one press more; or
   * all comes to rest, and then the server is put back from an older copy.
   */
  readonly endsWith: 'connecting' | 'aPress' | 'putBack'
}

const screen = fc.nat({ max: 2 })
/** Mostly one of the oldest messages, as on a real line; now and then any. */
const pick = fc.oneof(
  { weight: 3, arbitrary: fc.nat({ max: 1 }) },
  { weight: 1, arbitrary: fc.nat({ max: 40 }) },
)
const press = fc.record({
  do: fc.constant('press' as const),
  screen,
  kind: fc.oneof(
    { weight: 6, arbitrary: fc.constant<PressKind>('note') },
    { weight: 2, arbitrary: fc.constantFrom<PressKind>('longNote', 'trackCall', 'correction') },
    { weight: 1, arbitrary: fc.constantFrom<PressKind>('tooLong', 'malformed') },
  ),
})
const ofScreen = <D extends Turn['do']>(...names: D[]) =>
  fc.record({ do: fc.constantFrom(...names), screen })
const ofServer = <D extends Turn['do']>(...names: D[]) =>
  fc.record({ do: fc.constantFrom(...names) })
const ofMessage = <D extends Turn['do']>(...names: D[]) =>
  fc.record({ do: fc.constantFrom(...names), pick })

type Weighed = fc.WeightedArbitrary<Turn>

const everyday: readonly Weighed[] = [
  { weight: 8, arbitrary: press },
  { weight: 20, arbitrary: ofMessage('deliver') },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('calm') }) },
  { weight: 3, arbitrary: ofScreen('store', 'wait') },
]
const poorLine: readonly Weighed[] = [{ weight: 4, arbitrary: ofMessage('lose', 'repeat') }]
const brokenLine: readonly Weighed[] = [
  { weight: 2, arbitrary: ofScreen('connect') },
  { weight: 2, arbitrary: ofScreen('disconnect', 'reload', 'giveUpWaiting') },
  { weight: 1, arbitrary: ofServer('restart', 'diskFails', 'diskWorks') },
  { weight: 1, arbitrary: ofScreen('sendAgain') },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('role'),
      screen,
      role: fc.constantFrom('crew', 'pitWall'),
    }),
  },
]
const olderCopies: readonly Weighed[] = [
  { weight: 1, arbitrary: ofServer('copy', 'putBack') },
  { weight: 2, arbitrary: ofScreen('connect') },
]

/** A line that only loses and repeats shows what a screen does without connecting anew; the others, what after. */
const weather = [
  [...everyday, ...poorLine],
  [...everyday, ...poorLine, ...brokenLine],
  [...everyday, ...olderCopies],
  [...everyday, ...poorLine, ...brokenLine, ...olderCopies],
].map((turns) => fc.array(fc.oneof(...turns), { minLength: 5, maxLength: 100, size: 'max' }))

/** Everybody connected first, or most turns would find nobody to talk to. */
export const schedules: fc.Arbitrary<Schedule> = fc.record({
  turns: fc.oneof(...weather).map((turns) => [...everybodyConnects, ...turns]),
  endsWith: fc.constantFrom('connecting', 'aPress', 'putBack'),
})

const everybodyConnects: readonly Turn[] = [
  { do: 'connect', screen: 0 },
  { do: 'connect', screen: 1 },
  { do: 'connect', screen: 2 },
  { do: 'calm' },
]
