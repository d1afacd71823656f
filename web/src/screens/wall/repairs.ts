/** Compulsory repairs in words: the limit first, whether a choice is left, and what it costs to be late. */
import { compulsoryRepairs, type CompulsoryRepair, type RepairLimit } from '@pitlamp/race'
import { lapsWords } from '../../parts/penalty-words.ts'
import type { RepairRuleShown } from '../../parts/shown.ts'
import { clockTime, countdown, figure, hoursMinutes } from '../../parts/time.ts'
import { urgencyOf, type Urgency } from '../../parts/urgency.ts'
import type { Seen } from './people.ts'

export interface RepairShown {
  readonly fault: string
  readonly rule: RepairRuleShown
  readonly urgency: Urgency
  readonly dueAt: number
}

export function repairsShown({ state, now, crew }: Seen): readonly RepairShown[] {
  return compulsoryRepairs(state, now).map((repair) => ({
    fault: repair.fault.entry,
    rule: {
      limit: limitWords(repair),
      left: leftWords(repair.limit),
      burn: burnOf(repair.limit),
      verdict: verdictWords(repair, crew.timeZone),
      notes: notes(repair),
    },
    urgency: urgency(repair),
    dueAt: repair.limit?.dueAt ?? now,
  }))
}

/** What leaves no choice is now, however long it still may run; what nobody knows is soon. */
function urgency({ noChoice, limit }: CompulsoryRepair): Urgency {
  if (noChoice === true) return 'now'
  return limit?.remainingMs === undefined ? 'soon' : urgencyOf('repairLimit', limit.remainingMs)
}

function limitWords({ limit, clause }: CompulsoryRepair): string {
  const from = clause === undefined ? 'Rule' : `Rule ${clause}`
  return `${from}: ${limit ? withinWords(limit) : 'must be mended'}`
}

function withinWords({ by, laps, lengthMs }: RepairLimit): string {
  switch (by) {
    case 'time':
      return lengthMs === undefined ? 'in time' : `within ${hoursMinutesOf(lengthMs)}`
    case 'laps':
      return laps === undefined ? 'in laps' : `within ${lapsWords(laps)}`
    case 'laneChange':
      return 'by the lane change'
    case 'atOnce':
      return 'at once'
  }
}

function hoursMinutesOf(ms: number): string {
  return ms < 3_600_000 ? `${figure(ms)} min` : hoursMinutes(ms)
}

function leftWords(limit: RepairLimit | undefined): string | undefined {
  if (!limit) return 'how soon is not known: ask'
  const { remainingMs, over, estimated, running, by } = limit
  if (by === 'atOnce') return undefined
  if (remainingMs === undefined) return over ? 'over' : 'no pace entered: count the laps'
  if (over) return `over by ${figure(remainingMs)}${estimated ? ', estimated' : ''}`
  const left = `${estimated ? 'about ' : ''}${countdown(remainingMs)} left`
  return `${left}${estimated ? ', estimated' : ''}${running ? '' : ', stands'}`
}

function burnOf(limit: RepairLimit | undefined): number | undefined {
  if (!limit?.lengthMs || limit.remainingMs === undefined) return undefined
  return limit.remainingMs / limit.lengthMs
}

/** Where it is not known whether it can wait, what cannot cost a penalty is advised. */
function verdictWords(
  { noChoice, opportunityAt }: CompulsoryRepair,
  timeZone: string,
): string | undefined {
  if (noChoice === true) return 'The rule leaves no choice: bring it in.'
  if (noChoice === 'notKnown') return 'Not known whether it can wait: bring it in.'
  return opportunityAt === undefined
    ? undefined
    : `It can wait until about ${clockTime(opportunityAt, timeZone)}.`
}

const BECAUSE = {
  firstTime: 'the milder limit: first time',
  causedByOthers: 'the milder limit: others caused it',
} as const

function notes(repair: CompulsoryRepair): readonly string[] {
  const { because, limits, onlyUnderGreen, elseAtStop, costLaps, beyond } = repair
  return [
    ...(because ? [BECAUSE[because]] : []),
    ...limits.slice(1).map((limit) => `and ${withinWords(limit)}`),
    ...(onlyUnderGreen === true ? ['only under green'] : []),
    ...(elseAtStop === 'nothing' ? ['nothing else at that stop'] : []),
    ...costWords(costLaps),
    ...(beyond ? [beyondWords(beyond)] : []),
  ]
}

function costWords(costLaps: CompulsoryRepair['costLaps']): readonly string[] {
  if (costLaps === undefined) return []
  return costLaps === 'notKnown'
    ? ['what each lap after that costs is not known']
    : [`then −${lapsWords(costLaps)} for each lap`]
}

function beyondWords({ laps, costLaps }: NonNullable<CompulsoryRepair['beyond']>): string {
  const cost = costLaps === undefined ? '' : `, −${lapsWords(costLaps)}`
  return `about ${lapsWords(laps)} over${cost}`
}
