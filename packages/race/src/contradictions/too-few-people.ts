import { countInWords, thereAre } from '../checks/in-words.ts'
import { rulesOf, ruleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import type { Contradiction } from './contradiction.ts'
import { capital, type Ground, type Look } from './ground.ts'

/** More people needed at once than there are. An empty crew is one that is not written yet. */
export const tooFewPeople: Look = (ground) =>
  ground.people.length === 0
    ? []
    : [...atTheController(ground), ...atPosts(ground), ...inSitOuts(ground)]

function atTheController({ rules, drivers }: Ground): readonly Contradiction[] {
  if (drivers.length === 0) {
    const kept = rulesOf(rules, 'mayNotDo').filter(({ value }) => value.duty === 'controller')
    const why = 'The crew list or the rules keep everybody from the controller.'
    const what = 'Nobody in the crew may drive.'
    return [{ id: 'tooFewPeople:drivers', rules: kept.map(({ id }) => id), what, why }]
  }
  return rulesOf(rules, 'numberOfDrivers').flatMap(({ id, value }): Contradiction[] => {
    const least = known(value.atLeast)
    if (least === undefined || least <= drivers.length) return []
    const what = `${capital(countInWords(least, 'driver'))} must drive.`
    const why = `In the crew ${thereAre(drivers.length, 'person', 'people')} who may.`
    return [{ id: `tooFewPeople:${id}`, rules: [id], what, why }]
  })
}

function atPosts(ground: Ground): readonly Contradiction[] {
  const { rules, people, marshals } = ground
  const both = known(ruleValue(rules, 'marshalWhileDriving')?.allowed) === true
  return rulesOf(rules, 'marshalsOwed').flatMap(({ id, value }): Contradiction[] => {
    const count = known(value.count)
    if (count === undefined || known(value.when) !== 'wholeRace') return []
    const needed = both ? Math.max(1, count) : count + 1
    const owed = countInWords(count, 'marshal')
    if (marshals.length < count) {
      const why = `In the crew ${countInWords(marshals.length, 'person', 'people')} may marshal.`
      return [{ id: `tooFewPeople:${id}`, rules: [id], what: `The team owes ${owed}.`, why }]
    }
    if (count === 0 || people.length >= needed) return []
    const what = `The team owes ${owed} while somebody drives.`
    const why = `That takes ${countInWords(needed, 'person', 'people')} at once, and the crew has ${people.length}.`
    return [{ id: `tooFewPeople:${id}`, rules: [id], what, why }]
  })
}

function inSitOuts({ rules, segments, marshals }: Ground): readonly Contradiction[] {
  if (!segments.some(({ lane }) => lane === 'sitOut')) return []
  const owed = [
    ...rulesOf(rules, 'marshalsOwed')
      .filter(({ value }) => known(value.when) === 'sitOuts')
      .map(({ id, value }) => ({ id, count: known(value.count) ?? 0 })),
    ...rulesOf(rules, 'sitOutDuty')
      .filter(({ value }) => known(value.obliges) === 'marshalSomePosts')
      .map(({ id, value }) => ({ id, count: known(value.posts) ?? 0 })),
  ]
  return owed
    .filter(({ count }) => count > marshals.length)
    .map(({ id, count }) => ({
      ...{ id: `tooFewPeople:${id}`, rules: [id] },
      what: `In a sit-out the team owes ${countInWords(count, 'marshal')}.`,
      why: `In the crew ${countInWords(marshals.length, 'person', 'people')} may marshal.`,
    }))
}
