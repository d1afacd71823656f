import { rulesOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import type { Contradiction } from './contradiction.ts'
import type { Look } from './ground.ts'

/** No stops are demanded, and yet it is said when they are due. */
export const windowsWithoutStops: Look = ({ rules }) => {
  const stops = rulesOf(rules, 'mandatoryStops')
  if (stops.length === 0 || !stops.every(({ value }) => known(value.count) === 0)) return []
  const none = stops.map(({ id }) => id)
  const why = 'No stops are demanded. One of the two is wrong.'
  const said = (id: string, what: string): Contradiction => ({
    ...{ id: `windowsWithoutStops:${id}`, rules: [...none, id], what, why },
  })
  return [
    ...rulesOf(rules, 'stopWindows')
      .filter(({ value }) => (known(value.windows) ?? []).length > 0)
      .map(({ id }) => said(id, 'There are stop windows but no stops.')),
    ...rulesOf(rules, 'stopRhythm')
      .filter(({ value }) => known(value.everyMs) !== undefined)
      .map(({ id }) => said(id, 'There is a rhythm of stops but there are no stops.')),
  ]
}
