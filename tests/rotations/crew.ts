/** Random crews: paces, duties, people who come late or leave early, and what they wish for. */
import type { CrewMember } from '@pitlamp/race'
import fc from 'fast-check'
import { personId } from '../../server/src/work/testing/meant.ts'
import { between, type Room } from './parts.ts'

type Member = Omit<CrewMember, 'id'>
type Wish = NonNullable<CrewMember['wishList']>[number]

export function crew(room: Room, about: Omit<About, 'place'>): fc.Arbitrary<readonly Member[]> {
  const all = Array.from({ length: room.people }, (_, place) => member(room, { ...about, place }))
  return fc.tuple(...all)
}

interface About {
  readonly place: number
  /** When the last segment is over, in time counted from the first green. */
  readonly endAt: number
  /** Nobody wishes for anything. */
  readonly isPlain: boolean
}

/** The first two can do everything and are of the categories rules speak of, so that no rule is about nobody. */
function member(room: Room, about: About): fc.Arbitrary<Member> {
  const { place, isPlain } = about
  const first = ['novice', 'captain'][place]
  const isFirst = first !== undefined
  return fc
    .record({
      paceMs: fc.option(between(8_000, 11_000), { nil: undefined, freq: 8 }),
      more: fc.subarray(['novice', 'captain'], { maxLength: isFirst ? 0 : 2 }),
      duties: isFirst ? only() : duties,
      there: seldom(there(about), 6),
      wishList: isPlain ? fc.constant(undefined) : seldom(wishes(room, about), 3),
      restBlock: isPlain ? fc.constant(undefined) : seldom(restBlock(room, about), 5),
    })
    .map(({ paceMs, more, there: when, wishList, restBlock: rest, ...one }) => ({
      ...one,
      name: `Person ${place + 1}`,
      categories: [...(first ? [first] : []), ...more],
      ...(paceMs === undefined ? {} : { paceMs }),
      ...(when ? { there: when } : {}),
      ...(wishList ? { wishList } : {}),
      ...(rest ? { restBlock: rest } : {}),
    }))
}

function seldom<T>(value: fc.Arbitrary<T>, freq: number) {
  return fc.oneof(
    { weight: freq - 1, arbitrary: fc.constant(undefined) },
    { weight: 1, arbitrary: value },
  )
}

function only(...some: CrewMember['duties']): fc.Arbitrary<CrewMember['duties']> {
  return fc.constant(some)
}

const duties = fc.oneof(
  { weight: 6, arbitrary: only() },
  { weight: 1, arbitrary: only('controller', 'post') },
  { weight: 1, arbitrary: only('post', 'wall', 'bench') },
)

function part({ endAt }: About, least: number, most: number) {
  return between(least, most).map((share) => Math.round((endAt * share) / 100))
}

function there(about: About): fc.Arbitrary<NonNullable<CrewMember['there']>> {
  return fc.oneof(
    part(about, 5, 50).map((fromAt) => [{ id: 'late', fromAt }]),
    part(about, 50, 95).map((toAt) => [{ id: 'early', toAt }]),
    fc.tuple(part(about, 30, 45), part(about, 55, 70)).map(([toAt, fromAt]) => [
      { id: 'before', toAt },
      { id: 'after', fromAt },
    ]),
  )
}

function restBlock({ slotMs }: Room, about: About) {
  return fc.record({
    atLeastMs: between(1, 4).map((slots) => slots * slotMs),
    fromAt: part(about, 0, 30),
    toAt: part(about, 60, 100),
  })
}

function wishes({ people, fairMs }: Room, about: About): fc.Arbitrary<Wish[]> {
  const id = fc.constant('')
  const other = between(1, people - 1).map((on) => personId((about.place + on) % people))
  const of = <K extends Wish['kind']>(kind: K) => fc.constant(kind)
  const wish = fc.oneof(
    fc.record({ id, kind: of('beside'), other }),
    fc.record({ id, kind: of('after'), other }),
    fc.record({ id, kind: of('before'), other }),
    fc.record({ id, kind: of('notAtEnd'), which: fc.constantFrom('first', 'last') }),
    fc.record({
      ...{ id, kind: of('notBetween') },
      ...{ fromAt: part(about, 0, 50), toAt: part(about, 50, 100) },
    }),
    fc.record({
      ...{ id, kind: of('noMoreThan') },
      atMostMs: between(50, 150).map((share) => Math.round((fairMs * share) / 100)),
    }),
  ) as fc.Arbitrary<Wish>
  return fc
    .array(wish, { minLength: 1, maxLength: 2 })
    .map((all) => all.map((one, place) => ({ ...one, id: `w${place + 1}` })))
}
