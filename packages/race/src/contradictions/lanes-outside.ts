import { countInWords, thereAre } from '../checks/in-words.ts'
import { ruleValue, rulesOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import type { Contradiction } from './contradiction.ts'
import { capital, type Look } from './ground.ts'

/** An order that names lanes the tracks do not have, and colours that are more or fewer than there are lanes. */
export const lanesOutside: Look = ({ rules }) => {
  const tracks = ruleValue(rules, 'tracks')
  const perTrack = known(tracks?.lanes)
  if (perTrack === undefined) return []
  const lanes = perTrack * (known(tracks?.tracks) ?? 1)
  const why = `${capital(thereAre(lanes, 'lane'))}.`
  const orders = rulesOf(rules, 'laneOrder').flatMap(({ id, value }): Contradiction[] => {
    const named = [...(value.sequence ?? []), ...(known(value.sitOutsAfter) ?? [])]
    const beyond = named.find((lane) => lane > lanes)
    if (beyond === undefined) return []
    const what = `The order of lanes names lane ${beyond}.`
    return [{ id: `lanesOutside:${id}`, rules: [id], what, why }]
  })
  const colours = rulesOf(rules, 'tracks').flatMap(({ id, value }): Contradiction[] => {
    const count = known(value.colours)?.length
    if (count === undefined || count === lanes) return []
    const what = `The lanes have ${countInWords(count, 'colour')}.`
    return [{ id: `lanesOutside:${id}`, rules: [id], what, why }]
  })
  return [...orders, ...colours]
}
