import { countInWords, durationInWords } from '../checks/in-words.ts'
import { rulesOf, type RuleOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import type { Contradiction } from './contradiction.ts'
import { capital, timeOf, type Ground, type Look } from './ground.ts'

/**
 * Rest between stints that leaves the car without a driver. In a segment of length L one driver with stints of at
 * most M and rest of at least R drives at most M in every M + R, and M in what is left; all drivers together must
 * fill L. With rest as a share of the stint it is M, and of what is before it one part in 1 + share.
 */
export const restForTooFew: Look = (ground) => {
  const { drivers } = ground
  if (drivers.length === 0) return []
  return rulesOf(ground.rules, 'driverRest')
    .filter(({ value: { who } }) => who === undefined)
    .flatMap((rest) => [...inSegments(ground, rest), ...overBreaks(ground, rest)])
}

type Rest = RuleOf<'driverRest'>

function inSegments(ground: Ground, rest: Rest): readonly Contradiction[] {
  const stint = rulesOf(ground.rules, 'continuousDriving')
    .flatMap(({ id, value: { who, atMostMs } }) => {
      const mostMs = known(atMostMs)
      return who !== undefined || mostMs === undefined ? [] : [{ id, mostMs }]
    })
    .sort((a, b) => a.mostMs - b.mostMs)[0]
  const segment = [...ground.run].sort((a, b) => (timeOf(b) ?? 0) - (timeOf(a) ?? 0))[0]
  const lengthMs = segment ? timeOf(segment) : undefined
  if (!stint || !segment || lengthMs === undefined) return []
  const canMs = ground.drivers.length * mostOfOne(rest, stint.mostMs, lengthMs)
  if (canMs >= lengthMs) return []
  const rules = [rest.id, stint.id]
  const count = countInWords(ground.drivers.length, 'driver')
  const what = `${capital(count)} cannot fill ${ground.segmentName(segment.id)} with that much rest.`
  const why = `With stints of ${durationInWords(stint.mostMs)} they can drive ${durationInWords(canMs)} of its ${durationInWords(lengthMs)}.`
  return [{ id: `restForTooFew:${rules.join(':')}`, rules, what, why }]
}

/** An upper bound, exact for rest of a length alone. */
function mostOfOne({ value }: Rest, mostMs: number, lengthMs: number): number {
  const restMs = known(value.atLeastMs)
  const share = known(value.shareOfStint)
  let most = lengthMs
  if (restMs !== undefined && restMs > 0) {
    const turnMs = mostMs + restMs
    const left = lengthMs % turnMs
    most = Math.min(most, ((lengthMs - left) / turnMs) * mostMs + Math.min(mostMs, left))
  }
  if (share !== undefined && share > 0 && lengthMs > mostMs) {
    const product = (lengthMs - mostMs) * 1_000
    const by = 1_000 + share
    most = Math.min(most, mostMs + (product - (product % by)) / by)
  }
  return most
}

/** With one driver, every break between two segments is all the rest there is. */
function overBreaks(ground: Ground, rest: Rest): readonly Contradiction[] {
  const restMs = known(rest.value.atLeastMs)
  const short = breaksOf(ground).find(({ lengthMs }) => restMs !== undefined && lengthMs < restMs)
  if (ground.drivers.length !== 1 || restMs === undefined || !short) return []
  const what = 'The only driver cannot rest long enough between segments.'
  const why = `Before ${ground.segmentName(short.before)} there is a break of ${durationInWords(short.lengthMs)}, and rest lasts at least ${durationInWords(restMs)}.`
  return [{ id: `restForTooFew:${rest.id}`, rules: [rest.id], what, why }]
}

interface Break {
  readonly before: string
  readonly lengthMs: number
}

/** Breaks of a known length; over a lane change alone a stint goes on. */
function breaksOf({ programme }: Ground): readonly Break[] {
  const breaks: Break[] = []
  let between: { lengthMs: number | undefined; isBreak: boolean } | undefined
  for (const item of programme) {
    if (item.kind !== 'segment') {
      if (!between) continue
      const { lengthMs } = between
      if (lengthMs === undefined || item.lengthMs === undefined) between.lengthMs = undefined
      else between.lengthMs = lengthMs + item.lengthMs
      between.isBreak ||= item.kind !== 'laneChange'
      continue
    }
    if (item.lane === 'sitOut') {
      between = { lengthMs: undefined, isBreak: true }
      continue
    }
    const lengthMs = between?.isBreak && item.plannedAt === undefined ? between.lengthMs : undefined
    if (lengthMs !== undefined) breaks.push({ before: item.id, lengthMs })
    between = { lengthMs: 0, isBreak: false }
  }
  return breaks
}
