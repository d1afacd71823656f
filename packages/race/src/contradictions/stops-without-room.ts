import { durationInWords } from '../checks/in-words.ts'
import { rulesOf, ruleValue, type RuleOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import type { Contradiction } from './contradiction.ts'
import { capital, timeOf, type Ground, type Look } from './ground.ts'

/** Stops are demanded, and there is no time in which one could be made. */
export const stopsWithoutRoom: Look = (ground) => {
  const demanded = rulesOf(ground.rules, 'mandatoryStops').filter(
    ({ value }) => (known(value.count) ?? 0) > 0,
  )
  const [stops] = demanded
  return stops ? [...inWindows(ground, stops), ...inClosedPeriods(ground, demanded)] : []
}

type Demand = RuleOf<'mandatoryStops'>

function inWindows({ rules }: Ground, stops: Demand): readonly Contradiction[] {
  const minimum = rulesOf(rules, 'stopMinimum')[0]
  const minimumMs = known(minimum?.value.minimumMs)
  const ruled = rulesOf(rules, 'stopWindows')
  const windows = ruled.flatMap(({ value }) => known(value.windows) ?? [])
  const longestMs = Math.max(0, ...windows.map(({ fromMs, toMs }) => toMs - fromMs))
  if (!minimum || minimumMs === undefined || windows.length === 0) return []
  if (longestMs >= minimumMs || ruled.some(({ value }) => known(value.windows) === undefined)) {
    return []
  }
  const ids = [stops.id, minimum.id, ...ruled.map(({ id }) => id)]
  const what = 'No stop window is as long as a stop.'
  const why = `The longest lasts ${durationInWords(longestMs)}, a stop at least ${durationInWords(minimumMs)}.`
  return [{ id: `stopsWithoutRoom:${ids.join(':')}`, rules: ids, what, why }]
}

function inClosedPeriods(ground: Ground, demanded: readonly Demand[]): readonly Contradiction[] {
  return rulesOf(ground.rules, 'closedPeriod').flatMap(({ id, value }): Contradiction[] => {
    const closedMs = (known(value.firstMs) ?? 0) + (known(value.lastMs) ?? 0)
    if (closedMs === 0) return []
    const closed = `${durationInWords(closedMs)} of it are closed for stops.`
    if (value.of === 'race') {
      if (ground.raceMs === undefined || closedMs < ground.raceMs) return []
      const what = 'No stop can be made in the whole race.'
      const why = `The race lasts ${durationInWords(ground.raceMs)}, and ${closed}`
      const rules = [...demanded.map((stops) => stops.id), id]
      return [{ id: `stopsWithoutRoom:${rules.join(':')}`, rules, what, why }]
    }
    const each = demanded.filter((stops) => stops.value.per === 'segment')
    const shut = ground.run.filter((segment) => (timeOf(segment) ?? Infinity) <= closedMs)
    const all = shut.length === ground.run.length
    const [first] = shut
    const stops = each[0] ?? (all ? demanded[0] : undefined)
    if (!first || !stops) return []
    const what = all
      ? 'No stop can be made in any segment.'
      : `No stop can be made in ${ground.segmentName(first.id)}.`
    const why = `${capital(ground.segmentName(first.id))} lasts ${durationInWords(timeOf(first) ?? 0)}, and ${closed}`
    return [{ id: `stopsWithoutRoom:${stops.id}:${id}`, rules: [stops.id, id], what, why }]
  })
}

/** A stop of no length: GO would come as the car stops. */
export const stopOfNothing: Look = ({ rules }) => {
  const stops = known(ruleValue(rules, 'mandatoryStops')?.count)
  return rulesOf(rules, 'stopMinimum')
    .filter(({ value }) => known(value.minimumMs) === 0 && stops !== 0)
    .map(({ id }) => ({
      ...{ id: `stopOfNothing:${id}`, rules: [id], what: 'The minimum stop is nothing.' },
      why: 'GO would come as the car stops. Write the minimum, or leave it not known yet.',
    }))
}
