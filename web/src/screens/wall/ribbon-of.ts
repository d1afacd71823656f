/** The ribbon of a meeting: what was driven, filled in over what is planned. */
import {
  counted,
  currentRun,
  lanesOf,
  planTimeline,
  raceTimeline,
  segmentsOf,
  stopsDone,
  atOf,
  planInForce,
  type SegmentOutlook,
  type State,
  type TimelineSpan,
} from '@pitlamp/race'
import {
  viewOf,
  type RibbonRow,
  type RibbonShown,
  type RibbonSpan,
  type RibbonView,
} from '../../parts/ribbon.ts'
import { clockTime } from '../../parts/time.ts'
import type { Seen } from './people.ts'

export function ribbonOf({ state, now, crew }: Seen, whole: boolean): RibbonShown {
  const segments = segmentsOf(state, now)
  const plan = planTimeline(state, now).spans
  const race = raceTimeline(state, now).spans
  const stops = [...stopsMade(state), ...stopsPlanned(state, segments, now)]
  const rows = rowsOf(crew.people, plan, race)
  return {
    view: viewOf(extent(segments, now), now, whole),
    nowAt: now,
    nowWords: `now, ${clockTime(now, crew.timeZone)}`,
    rows,
    stops,
    windows: stopsDone(state, now).windows.flatMap(({ id, opensAt, closesAt, state: standing }) =>
      opensAt === undefined || closesAt === undefined || standing === 'served'
        ? []
        : [{ id, fromAt: opensAt, toAt: closesAt }],
    ),
    offs: state.raceControl.interruptions.map(({ entry, fromAt, toAt }) => ({
      id: entry,
      fromAt,
      toAt: toAt ?? now,
    })),
    faults: state.car.faults.map(({ entry, notedAt, ended }) => ({
      id: entry,
      fromAt: notedAt,
      toAt: ended?.at ?? now,
    })),
    incidents: state.car.incidents.map(({ entry, at }) => ({ id: entry, at })),
    lanes: lanesShown(segments, state, now),
    summary: summary(rows, stops),
  }
}

/** Where cars are free to change lane there are none. */
function lanesShown(
  segments: readonly SegmentOutlook[],
  state: State,
  now: number,
): RibbonShown['lanes'] {
  const lanes = lanesOf(state, now)
  return segments.flatMap(({ item, startsAt, endsAt = startsAt }) => {
    const lane = lanes.get(item.id)
    if (lane === undefined) return []
    const word = lane === 'sitOut' ? '–' : lane === 'notDrawnYet' ? '?' : String(lane.lane)
    return [{ id: `${item.id} ${startsAt}`, fromAt: startsAt, toAt: endsAt, word }]
  })
}

function extent(segments: readonly SegmentOutlook[], now: number): RibbonView {
  return {
    fromAt: segments[0]?.startsAt ?? now,
    toAt: segments.reduce((last, { endsAt, startsAt }) => Math.max(last, endsAt ?? startsAt), now),
  }
}

function rowsOf(
  people: readonly { readonly id: string; readonly name: string }[],
  plan: readonly TimelineSpan[],
  race: readonly TimelineSpan[],
): readonly RibbonRow[] {
  return people.map(({ id, name }) => ({
    id,
    name,
    // The outline is drawn last, so that where fill leaves outline it is seen that the plan broke.
    spans: [...spansOf(race, id, false), ...spansOf(plan, id, true)],
  }))
}

function spansOf(
  from: readonly TimelineSpan[],
  person: string,
  planned: boolean,
): readonly RibbonSpan[] {
  return from
    .filter((span) => span.person === person && span.duty !== 'offDuty')
    .map(({ id, duty, fromAt, toAt }) => ({
      id: `${planned ? 'plan' : 'race'} ${id} ${fromAt}`,
      duty: duty === 'controller' || duty === 'post' ? duty : 'other',
      fromAt,
      toAt,
      planned,
    }))
}

function stopsMade(state: State): RibbonShown['stops'] {
  return state.car.stops.flatMap(({ entry, moments }) => {
    const at = (moments.pitEntry ?? moments.stopped ?? moments.leaving ?? moments.pitExit)?.at
    return at === undefined ? [] : [{ id: entry, at, done: true }]
  })
}

function stopsPlanned(
  state: State,
  segments: readonly SegmentOutlook[],
  now: number,
): RibbonShown['stops'] {
  const served = new Set(state.car.stops.map(({ planned }) => planned))
  const running = currentRun(state)
  return (planInForce(state, now)?.stops ?? []).flatMap(({ id, segment, atMs }) => {
    const outlook = segments.find(({ item }) => item.id === segment)
    if (served.has(id) || !outlook || outlook.state === 'over') return []
    const at = running?.segment === segment ? atOf(running, atMs, now) : outlook.startsAt + atMs
    return [{ id, at, done: false }]
  })
}

function summary(rows: readonly RibbonRow[], stops: RibbonShown['stops']): string {
  const made = stops.filter(({ done }) => done).length
  return `The race so far and the plan: ${counted(rows.length, 'person', 'people')}, ${counted(made, 'stop')} made, ${stops.length - made} planned.`
}
