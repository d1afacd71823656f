import { plural } from '../sentences/plural.ts'
import { countInWords, durationInWords } from '../checks/in-words.ts'
import { rulesOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import type { Contradiction } from './contradiction.ts'
import { boundsOfDriver, type Bound, type Driver } from './driver-bounds.ts'
import { capital, type Ground, type Look } from './ground.ts'

/**
 * What all drivers must drive together is more than there is. Where the rules say how many drive at least, those
 * with the smallest minima are taken; otherwise everybody who may drive is, and what is said is that not all can.
 */
export const leastTogether: Look = (ground) => [
  ...inTime(ground),
  ...inStints(ground),
  ...inSegments(ground),
]

function inTime(ground: Ground): readonly Contradiction[] {
  const { mostRunMs, drivers } = ground
  if (mostRunMs === undefined) return []
  const demanded = mostDrivers(ground)
  const missing = Math.max(0, (demanded?.count ?? 0) - drivers.length)
  const strangers = Array.from({ length: Math.min(missing, 40) }, (): Driver => ({}))
  const least = [...drivers, ...strangers]
    .map((driver) => boundsOfDriver(ground, driver).least)
    .sort((a, b) => a.ms - b.ms)
    .slice(0, demanded?.count)
  const sum = least.reduce((all, { ms }) => all + ms, 0)
  if (sum <= mostRunMs) return []
  const count = countInWords(least.length, 'driver')
  const why = `Together that is ${durationInWords(sum)}, and there is ${durationInWords(mostRunMs)} to drive.`
  if (demanded) {
    const rules = [demanded.rule, ...rulesIn(least)]
    const what = `${capital(count)} must drive more than there is to drive.`
    return [{ id: `leastTogether:${rules.join(':')}`, rules, what, why }]
  }
  const rules = rulesIn(least)
  const what = `Not all of ${count} in the crew can drive as long as a driver must.`
  return [{ id: `leastTogether:${rules.join(':')}`, rules, what, why }]
}

function mostDrivers({
  rules,
}: Ground): { readonly rule: string; readonly count: number } | undefined {
  return rulesOf(rules, 'numberOfDrivers')
    .flatMap(({ id, value }) => {
      const count = known(value.atLeast)
      return count === undefined ? [] : [{ rule: id, count }]
    })
    .sort((a, b) => b.count - a.count)[0]
}

export function rulesIn(bounds: readonly Bound[]): readonly string[] {
  return [...new Set(bounds.flatMap(({ rules }) => rules))]
}

/** So many stints of such a length; with n changes there are n + 1. */
function inStints({ rules, mostRunMs }: Ground): readonly Contradiction[] {
  if (mostRunMs === undefined) return []
  const lengths = rulesOf(rules, 'continuousDriving').filter(
    ({ value: { who } }) => who === undefined,
  )
  return rulesOf(rules, 'numberOfChanges').flatMap((number) =>
    lengths.flatMap((length): Contradiction[] => {
      const [least, ms] = [known(number.value.atLeast), known(length.value.atLeastMs)]
      if (least === undefined || ms === undefined) return []
      const stints = number.value.of === 'changes' ? least + 1 : least
      if (stints * ms <= mostRunMs) return []
      const what = `${capital(countInWords(stints, 'stint'))} of at least ${durationInWords(ms)} are more than there is to drive.`
      const why = `Together that is ${durationInWords(stints * ms)}, and there is ${durationInWords(mostRunMs)} to drive.`
      const ids = [number.id, length.id]
      return [{ id: `leastTogether:${ids.join(':')}`, rules: ids, what, why }]
    }),
  )
}

/** One driver cannot drive in more segments than there are; several can share one. */
function inSegments({ rules, run }: Ground): readonly Contradiction[] {
  if (run.length === 0) return []
  return rulesOf(rules, 'drivingSegments').flatMap(({ id, value }): Contradiction[] => {
    const least = known(value.atLeast)
    if (least === undefined || least <= run.length) return []
    const what = `Each driver must drive in ${countInWords(least, 'segment')}.`
    const why = `There ${plural(run.length, 'is', 'are')} only ${countInWords(run.length, 'segment')} with a lane.`
    return [{ id: `leastTogether:${id}`, rules: [id], what, why }]
  })
}
