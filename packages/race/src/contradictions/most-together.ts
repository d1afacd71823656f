import { countInWords, durationInWords } from '../checks/in-words.ts'
import { rulesOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import type { Contradiction } from './contradiction.ts'
import { boundsOfDriver, type Driver } from './driver-bounds.ts'
import { capital, hasCategory, timeOf, type Ground, type Look } from './ground.ts'
import { rulesIn } from './least-together.ts'

/**
 * What all drivers may drive together is less than there is. Where the rules say how many drive at most, those who
 * may drive longest are taken. Without a crew it takes such a rule.
 */
export const mostTogether: Look = (ground) => [
  ...inTime(ground),
  ...inWindows(ground),
  ...inSegments(ground),
]

function inTime(ground: Ground): readonly Contradiction[] {
  const { leastRunMs } = ground
  const allowed = fewestDrivers(ground)
  const drivers = driversTaken(ground, allowed?.count)
  if (leastRunMs === undefined || drivers.length === 0 || allowed?.count === 0) return []
  const most = drivers
    .map((driver) => boundsOfDriver(ground, driver).most)
    .sort((a, b) => b.ms - a.ms)
    .slice(0, allowed?.count)
  const sum = most.reduce((all, { ms }) => all + ms, 0)
  if (sum >= leastRunMs) return []
  const limited = allowed && most.length === allowed.count ? [allowed.rule] : []
  const rules = [...limited, ...rulesIn(most)]
  const what = `${capital(countInWords(most.length, 'driver'))} may not drive as long as there is to drive.`
  const why = `Together they may drive ${durationInWords(sum)}, and there is ${durationInWords(leastRunMs)} to drive.`
  return [{ id: `mostTogether:${rules.join(':')}`, rules, what, why }]
}

/** In a segment as long as the window, all drivers together fill it or nobody can. */
function inWindows(ground: Ground): readonly Contradiction[] {
  const allowed = fewestDrivers(ground)?.count
  const drivers = driversTaken(ground, allowed).length
  const count = Math.min(drivers, allowed ?? drivers)
  const sure = ground.run.filter(({ lane }) => lane !== 'notDrawnYet')
  const longestMs = Math.max(0, ...sure.map((segment) => timeOf(segment) ?? 0))
  if (count === 0) return []
  return rulesOf(ground.rules, 'rollingDriving').flatMap(({ id, value }): Contradiction[] => {
    const [mostMs, withinMs] = [known(value.atMostMs), known(value.withinMs)]
    if (value.who !== undefined || mostMs === undefined || withinMs === undefined) return []
    if (withinMs > longestMs || count * mostMs >= withinMs) return []
    const what = `${capital(countInWords(count, 'driver'))} cannot fill ${durationInWords(withinMs)} without a break.`
    const why = `Each may drive ${durationInWords(mostMs)} of it, ${durationInWords(count * mostMs)} together.`
    return [{ id: `mostTogether:${id}`, rules: [id], what, why }]
  })
}

function inSegments(ground: Ground): readonly Contradiction[] {
  const sure = ground.run.filter(({ lane }) => lane !== 'notDrawnYet').length
  const count = fewestDrivers(ground)?.count
  const drivers = driversTaken(ground, count)
  const rules = rulesOf(ground.rules, 'drivingSegments')
  if (drivers.length === 0 || rules.length === 0 || count === 0) return []
  const most = drivers
    .map((driver) => {
      const about = rules.filter(
        ({ value: { who } }) => who === undefined || hasCategory(driver, who),
      )
      return Math.min(...about.map(({ value }) => known(value.atMost) ?? Infinity))
    })
    .sort((a, b) => b - a)
    .slice(0, count)
  const sum = most.reduce((all, one) => all + one, 0)
  if (sum >= sure) return []
  const ids = rules.map(({ id }) => id)
  const what = `${capital(countInWords(most.length, 'driver'))} may drive in ${countInWords(sum, 'segment')} together.`
  const why = `There are ${countInWords(sure, 'segment')} with a lane, and somebody must drive in each.`
  return [{ id: `mostTogether:${ids.join(':')}`, rules: ids, what, why }]
}

function driversTaken({ people, drivers }: Ground, allowed: number | undefined): readonly Driver[] {
  if (people.length > 0) return drivers
  return Array.from({ length: Math.min(allowed ?? 0, 40) }, (): Driver => ({}))
}

function fewestDrivers({
  rules,
}: Ground): { readonly rule: string; readonly count: number } | undefined {
  return rulesOf(rules, 'numberOfDrivers')
    .flatMap(({ id, value }) => {
      const count = known(value.atMost)
      return count === undefined ? [] : [{ rule: id, count }]
    })
    .sort((a, b) => a.count - b.count)[0]
}
