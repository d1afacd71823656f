/** What race control said, as tiles: a number typed first goes with the press that needs one. */
import {
  placesInWords,
  inForce,
  penalties,
  rulesOf,
  type PenaltyNow,
  type RuleValue,
  type State,
} from '@pitlamp/race'
import {
  lapsWords,
  PENALTY_WORD,
  penaltyWords,
  type PenaltyBody,
} from '../../parts/penalty-words.ts'
import type { Tile } from '../../parts/shown.ts'
import { clockTime, countdown } from '../../parts/time.ts'
import type { Seen } from './people.ts'
import type { ToRecord } from './to-record.ts'

type What = PenaltyBody['what']
const WHATS = Object.keys(PENALTY_WORD) as readonly What[]

/** Laps and seconds held cannot be said without a number; a stop-and-go may be, or be of 0 s. Places may, but not none. */
export function penaltyTiles(amount: number | undefined): readonly Tile[] {
  return WHATS.map((what) => {
    const needs = what === 'laps' || what === 'secondsHeld'
    const off = needs ? !amount : what === 'position' && amount === 0
    return { id: what, word: tileWord(what, amount), ...(off ? { off, hint: 'how many?' } : {}) }
  })
}

function tileWord(what: What, amount: number | undefined): string {
  if (amount === undefined) return PENALTY_WORD[what]
  switch (what) {
    case 'laps':
      return `−${lapsWords(amount)}`
    case 'secondsHeld':
      return `${amount} s held`
    case 'stopAndGo':
      return `Stop-and-go, ${amount} s`
    case 'position':
      return placesInWords(amount)
    default:
      return PENALTY_WORD[what]
  }
}

/** How far it counts is what the rules say of such a penalty. */
export function penalty(
  state: State,
  now: number,
  said: { what: string; amount?: number },
): ToRecord {
  const what = said.what as What
  const { amount } = said
  const body: PenaltyBody = { what, scope: scopeOf(state, now, what), ...amountOf(what, amount) }
  return { kind: 'penalty.1', body, word: `Penalty, ${penaltyWords(body)}` }
}

function amountOf(what: What, amount: number | undefined): Partial<PenaltyBody> {
  if (amount === undefined) return {}
  if (what === 'laps') return { laps: amount }
  if (what === 'secondsHeld' || what === 'stopAndGo') return { heldMs: amount * 1_000 }
  return what === 'position' ? { words: tileWord(what, amount) } : {}
}

const AS_RULES_SAY: Readonly<Partial<Record<What, RuleValue<'penalty'>['is']>>> = {
  secondsHeld: 'seconds',
  lossOfSegment: 'segmentLost',
}

function scopeOf(state: State, now: number, what: What): PenaltyBody['scope'] {
  const rules = rulesOf(inForce(state, 'rules', now)?.rules ?? [], 'penalty')
  const is = AS_RULES_SAY[what] ?? what
  const said = rules.find(({ value }) => value.is === is)?.value.scope
  return said ?? (what === 'lossOfSegment' ? 'segment' : 'race')
}

export function lapsTiles(amount: number | undefined): readonly Tile[] {
  const off = amount === undefined || amount === 0
  return [
    { id: '1', word: `+${amount === undefined ? '… laps' : lapsWords(amount)}`, off },
    { id: '-1', word: `−${amount === undefined ? '… laps' : lapsWords(amount)}`, off },
  ]
}

export function lapsCorrected(sign: string, amount: number): ToRecord {
  return { kind: 'lapsCorrected.1', body: { laps: Number(sign) * amount }, word: 'Laps corrected' }
}

/** What is called out most, so that nobody types it. Common practice, no source. */
const RULINGS = [
  'Work on the car allowed',
  'Hands off the car',
  'Restart from the grid',
  'The last lap counts',
  'Warning to all teams',
  'Captains to race control',
]
export const rulingTiles: readonly Tile[] = RULINGS.map((word) => ({ id: word, word }))

export interface OpenPenalty {
  readonly id: string
  /** `12:04 Stop-and-go, 10 s` */
  readonly words: string
  /** `to be served within 3 laps`, `protest until 12:34` */
  readonly so: string
  readonly toServe: boolean
  /** Said already, or the time for it is over. */
  readonly contested: boolean
}

/** Newest first: those to be served, and those that could still be withdrawn. */
export function openPenalties({ state, now, crew }: Seen): readonly OpenPenalty[] {
  return penalties(state, now)
    .filter(({ status }) => status === 'toServe' || status === 'standing')
    .map((one) => ({
      id: one.penalty.entry,
      words: `${clockTime(one.penalty.at, crew.timeZone)} ${penaltyWords(one.penalty.body)}`,
      so: soWords(one, crew.timeZone),
      toServe: one.status === 'toServe',
      contested: one.notes.length > 0,
    }))
    .reverse()
}

function soWords({ serve, protest, notes }: PenaltyNow, timeZone: string): string {
  const within = serve?.withinLaps === undefined ? '' : ` within ${lapsWords(serve.withinLaps)}`
  const left =
    serve?.remainingMs === undefined
      ? ''
      : `, about ${countdown(serve.remainingMs)} left, estimated`
  return [
    ...(serve ? [`to be served${within}${left}`] : []),
    ...(protest && !protest.over ? [`protest until ${clockTime(protest.until, timeZone)}`] : []),
    ...(protest?.over === true ? ['the time to protest is over'] : []),
    ...(notes.length > 0 ? ['we think it is wrong'] : []),
  ].join(' · ')
}
