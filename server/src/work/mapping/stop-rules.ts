/** Rules of stops, and of what the car carries between them. */
import { known, type RuleKind } from '@pitlamp/race'
import type { Ground } from './ground.ts'
import type { Mappings } from './mapping.ts'
import { cameToMs } from './segments.ts'

type Stops = Extract<
  RuleKind,
  | 'runningBetweenStops'
  | 'changeAtStop'
  | 'mandatoryStops'
  | 'stopWindows'
  | 'stopRhythm'
  | 'closedPeriod'
  | 'stopTask'
  | 'driverChange'
  | 'energy'
>

export const STOPS: Mappings<Stops> = {
  runningBetweenStops: {
    rules: ({ id, kind, value }) => {
      const atLeastMs = known(value.atLeastMs)
      return atLeastMs === undefined ? [] : [{ id, kind, atLeastMs }]
    },
  },
  changeAtStop: {
    rules: ({ id, kind, value: { changes } }) => (known(changes) === true ? [{ id, kind }] : []),
  },
  mandatoryStops: {
    rules: ({ id, kind, value: { per, ...value } }) => {
      const count = known(value.count)
      return count === undefined ? [] : [{ id, kind, count, per }]
    },
  },
  stopWindows: {
    rules: ({ id, kind, value }, ground) => {
      const windows = known(value.windows)?.filter((window) => isAhead(window, ground))
      if (!windows || windows.length === 0) return []
      return [{ id, kind, windows: windows.map(({ id: _, ...window }) => window) }]
    },
  },
  stopRhythm: {
    rules: ({ id, kind, value }) => {
      const [everyMs, toleranceMs] = [known(value.everyMs), known(value.toleranceMs)]
      return everyMs && toleranceMs !== undefined ? [{ id, kind, everyMs, toleranceMs }] : []
    },
  },
  closedPeriod: {
    rules: ({ id, kind, value: { of, firstMs, lastMs } }) => [
      { id, kind, of, firstMs: known(firstMs), lastMs: known(lastMs) },
    ],
  },
  stopTask: {
    rules: ({ id, kind, value: { task, ...value } }, { timeline }) => {
      const [times, named] = [known(value.times), known(value.segments)]
      if (times === undefined || (value.segments !== undefined && !named)) return []
      const segments = named?.filter((name) => timeline.segments.some((one) => one.id === name))
      return [{ id, kind, task, times, ...(segments ? { segments } : {}) }]
    },
  },
  /** While it is not known where drivers change, nothing holds them. */
  driverChange: {
    rules: ({ id, kind, value }) => [
      {
        ...{ id, kind },
        where: known(value.where) ?? 'anywhere',
        order: known(value.order) ?? 'anyOrder',
      },
    ],
  },
  energy: {
    rules: ({ id, kind, value }) => {
      const [fullMs, fullLaps] = [known(value.fullMs), known(value.fullLaps)]
      const leftAtEnd = known(value.leftAtEnd)
      if (fullMs === undefined && fullLaps === undefined) return []
      return [{ id, kind, fullMs, fullLaps, leftAtEnd }]
    },
  },
}

/** A window that is over in the race was served or missed, and nothing that is planned changes that. */
function isAhead(
  { segment: name, toMs }: { readonly segment: string; readonly toMs: number },
  ground: Ground,
): boolean {
  const segment = ground.timeline.segments.find(({ id }) => id === name)
  return segment !== undefined && (!ground.isRace || toMs > cameToMs(segment, ground))
}
