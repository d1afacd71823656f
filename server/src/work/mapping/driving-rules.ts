/** Rules of driving and rest. */
import { known, type RuleKind } from '@pitlamp/race'
import { cutProRata } from './cut-pro-rata.ts'
import type { Ground } from './ground.ts'
import { inMs, leastAndMost, ofWhom, type Mappings } from './mapping.ts'
import { paceOf } from './people.ts'

type Driving = Extract<
  RuleKind,
  | 'drivingTime'
  | 'drivingShare'
  | 'drivingSegments'
  | 'equalShare'
  | 'drivingSpread'
  | 'continuousDriving'
  | 'lapsBetweenChanges'
  | 'rollingDriving'
  | 'blockDriving'
  | 'driverRest'
  | 'stintsEach'
  | 'stintsInARow'
  | 'numberOfDrivers'
  | 'numberOfChanges'
  | 'followingDrivers'
  | 'endDriver'
>

export const DRIVING: Mappings<Driving> = {
  drivingTime: {
    rules: ({ id, kind, value: { who, atLeastMs, atMostMs } }, ground) => {
      const limits = leastAndMost(atLeastMs, atMostMs)
      if (!limits) return []
      return [{ id, kind, ...ofWhom(who), ...inMs(cutProRata(ground, limits)) }]
    },
  },
  drivingShare: {
    rules: ({ id, kind, value: { who, atLeast, atMost, longerThanMs } }) => {
      const limits = leastAndMost(atLeast, atMost)
      const longer = longerThanMs === undefined ? {} : { longerThanMs }
      return limits ? [{ id, kind, ...ofWhom(who), ...limits, ...longer }] : []
    },
  },
  drivingSegments: {
    rules: ({ id, kind, value: { who, atLeast, atMost } }) => {
      const limits = leastAndMost(atLeast, atMost)
      return limits ? [{ id, kind, ...ofWhom(who), ...limits }] : []
    },
  },
  equalShare: {
    rules: ({ id, kind, value: { of, ...tolerances } }) => {
      const tolerance = known(tolerances.tolerance)
      const toleranceMs = of === 'time' ? known(tolerances.toleranceMs) : undefined
      const isSaid = tolerances.tolerance !== undefined || tolerances.toleranceMs !== undefined
      if (isSaid && tolerance === undefined && toleranceMs === undefined) return []
      return [{ id, kind, of, tolerance, toleranceMs }]
    },
  },
  drivingSpread: {
    rules: ({ id, kind, value: { atMostMs } }, ground) => {
      const most = known(atMostMs)
      if (most === undefined) return []
      return [{ id, kind, atMostMs: cutProRata(ground, { atMost: most }).atMost ?? most }]
    },
  },
  continuousDriving: {
    rules: ({ id, kind, value: { who, atLeastMs, atMostMs } }) => {
      const limits = leastAndMost(atLeastMs, atMostMs)
      return limits ? [{ id, kind, ...ofWhom(who), ...inMs(limits) }] : []
    },
  },
  /** Laps at the slowest pace, and a stop to stand in: longer than need be, also for the first and the last stint. */
  lapsBetweenChanges: {
    rules: ({ id, value: { atLeast } }, ground) => {
      const laps = known(atLeast)
      if (laps === undefined) return []
      const atLeastMs = laps * slowestLapMs(ground) + stopMs(ground)
      return [{ id, kind: 'continuousDriving', atLeastMs }]
    },
  },
  rollingDriving: {
    rules: ({ id, kind, value: { who, ...value } }) => {
      const [atMostMs, withinMs] = [known(value.atMostMs), known(value.withinMs)]
      if (atMostMs === undefined || withinMs === undefined) return []
      return [{ id, kind, ...ofWhom(who), atMostMs, withinMs }]
    },
  },
  blockDriving: {
    rules: ({ id, kind, value }) => {
      const blockMs = known(value.blockMs)
      const limits = leastAndMost(value.atLeastMs, value.atMostMs)
      return blockMs && limits ? [{ id, kind, blockMs, ...inMs(limits) }] : []
    },
  },
  driverRest: {
    rules: ({ id, kind, value: { who, ...value } }) => {
      const [atLeastMs, shareOfStint] = [known(value.atLeastMs), known(value.shareOfStint)]
      if (atLeastMs === undefined && shareOfStint === undefined) return []
      const marshallingIsRest = known(value.marshalling) === 'isRest'
      return [{ id, kind, ...ofWhom(who), atLeastMs, shareOfStint, marshallingIsRest }]
    },
  },
  stintsEach: {
    rules: ({ id, kind, value: { who, atLeast, atMost } }) => {
      const limits = leastAndMost(atLeast, atMost)
      return limits ? [{ id, kind, ...ofWhom(who), ...limits }] : []
    },
  },
  stintsInARow: {
    rules: ({ id, kind, value }) => {
      const atMost = known(value.atMost)
      return atMost === undefined ? [] : [{ id, kind, atMost }]
    },
  },
  numberOfDrivers: {
    rules: ({ id, kind, value: { atLeast, atMost } }) => {
      const limits = leastAndMost(atLeast, atMost)
      return limits ? [{ id, kind, ...limits }] : []
    },
  },
  numberOfChanges: {
    rules: ({ id, kind, value: { of, atLeast, atMost } }) => {
      const limits = leastAndMost(atLeast, atMost)
      return limits ? [{ id, kind, of, ...limits }] : []
    },
  },
  followingDrivers: {
    rules: ({ id, kind, value: { first, then, ...value } }) => {
      const must = known(value.must)
      return must === undefined ? [] : [{ id, kind, first, then, must: must === 'must' }]
    },
  },
  endDriver: {
    rules: ({ id, kind, value: { which, who, ...value } }) => {
      const may = known(value.may)
      return may === undefined ? [] : [{ id, kind, which, who, must: may === 'must' }]
    },
  },
}

function slowestLapMs(ground: Ground): number {
  return ground.crew.people.reduce((most, one) => Math.max(most, paceOf(one, ground).lapMs), 0)
}

function stopMs({ regulations }: Ground): number {
  const rule = regulations.rules.find((one) => one.kind === 'stopMinimum')
  return known(rule?.value.minimumMs) ?? 0
}
