import { known } from '../../rules/shape.ts'
import { isOf } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { placeInWords } from '../places.ts'
import { beginningOf, changesOf } from './relay.ts'

/** Every change from somebody of the first category to somebody else; nobody follows themselves. */
export const followingDrivers: Check<'followingDrivers'> = {
  axis: 'none',
  limits: ({ first, must, then }, bench) => {
    const how = known(must)
    if (how === undefined) return []
    const changes = changesOf(bench).filter(
      ({ from, to }) => from.driver.id !== to.driver.id && isOf(from.driver, first),
    )
    const cases = changes.map(({ from, to }): Case => {
      const follows = isOf(to.driver, then) ? 1 : 0
      const rule = `after a ${first} a ${then} ${how === 'must' ? 'must' : 'must not'} drive`
      return {
        sense: how === 'must' ? 'atLeast' : 'atMost',
        unit: 'count',
        limit: how === 'must' ? 1 : 0,
        value: follows,
        at: to.stint.fromAt,
        people: [from.driver.id, to.driver.id],
        spans: [...from.stint.spanIds, ...to.stint.spanIds],
        says: () =>
          `${to.driver.name} drives after ${from.driver.name} from ${placeInWords(bench, beginningOf(to.stint))}: ${rule}.`,
      }
    })
    const called = `After a ${first}${how === 'must' ? '' : ' no'} ${how === 'must' ? 'a ' : ''}${then}`
    return [{ name: how, called, cases }]
  },
}
