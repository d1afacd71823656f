import { ruleValue } from '../../rules/index.ts'
import { known } from '../../rules/shape.ts'
import type { TimelineStop } from '../../timeline/stops.ts'
import type { Bench, Turn } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { placeInWords } from '../places.ts'

/**
 * Whoever drives the car in against whoever drives it out of each mandatory stop. A change with oneself is one
 * where the rules let it begin a new stint. A stop is judged once both are there; one that
 * was made without anybody recording its end is not.
 */
export const changeAtStop: Check<'changeAtStop'> = {
  axis: 'meeting',
  limits: ({ changes }, bench) => {
    if (known(changes) !== true) return []
    const { rules } = bench.regulations
    const withOneself = known(ruleValue(rules, 'changeWithOneself')?.begins) === true
    const { turns, mandatoryStops, stopMinimumMs } = bench
    const cases = mandatoryStops.flatMap((stop): Case[] => {
      if (stop.done && stop.outAt === undefined) return []
      const outAt = stop.outAt ?? stop.at + stopMinimumMs
      const next = turns.findIndex(({ stint }) => stint.fromAt >= stop.at)
      const before = turns[(next < 0 ? turns.length : next) - 1]
      const after = turns.find(({ stint }) => stint.toAt > outAt)
      if (!before || !after) return []
      const changed =
        before.driver.id !== after.driver.id || (withOneself && before.stint !== after.stint)
      return [caseOf(bench, stop, { before, after, changed })]
    })
    return [{ name: 'changes', called: 'The driver changes at a stop', cases }]
  },
}

interface Change {
  readonly before: Turn
  readonly after: Turn
  readonly changed: boolean
}

function caseOf(bench: Bench, stop: TimelineStop, { before, after, changed }: Change): Case {
  const place = placeInWords(bench, { segment: stop.segment, clockMs: stop.atMs })
  return {
    sense: 'atLeast',
    unit: 'count',
    limit: 1,
    value: changed ? 1 : 0,
    at: stop.at,
    people: [...new Set([before.driver.id, after.driver.id])],
    spans: [...new Set([...before.stint.spanIds, ...after.stint.spanIds])],
    stops: [stop.id],
    says: () =>
      changed
        ? `${after.driver.name} drives on from ${before.driver.name} at the stop at ${place}.`
        : `${before.driver.name} drives on after the stop at ${place}; the driver changes at every mandatory stop.`,
  }
}
