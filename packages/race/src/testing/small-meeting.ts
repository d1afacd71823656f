/** Two timed segments of twenty minutes with a break of ten, four people, documents adopted before green. */
import type { DocumentName } from '../entry/kinds/record.ts'
import type { Crew } from '../documents/crew.ts'
import type { Plan } from '../documents/plan.ts'
import type { Regulations } from '../documents/rules.ts'
import type { Rule } from '../rules/index.ts'
import { PEOPLE } from './ids.ts'
import { GREEN, Pressing } from './pressing.ts'

export const MINUTE = 60_000
export const SECOND = 1_000

const programme: Regulations['programme'] = [
  { id: 'one', kind: 'segment', length: { by: 'time', lengthMs: 1_200_000 } },
  { id: 'rest', kind: 'break', lengthMs: 600_000 },
  { id: 'two', kind: 'segment', length: { by: 'time', lengthMs: 1_200_000 } },
]

export function regulations(rules: readonly Rule[] = []): Regulations {
  return { name: 'Two twenties', timeZone: 'Europe/Berlin', programme, rules: [...rules] }
}

function crew(paceMs: number | undefined): Crew {
  const pace = paceMs === undefined ? {} : { paceMs }
  const people = Object.entries(PEOPLE)
  return { people: people.map(([name, id]) => ({ id, name, duties: [], ...pace })) }
}

/** Solveig and Okello drive ten minutes each; Imre marshals, then Tamsin. */
export const plan: Plan = {
  spans: [
    span('s1', PEOPLE.Solveig, { duty: 'controller', fromMs: 0, toMs: 600_000 }),
    span('s2', PEOPLE.Okello, { duty: 'controller', fromMs: 600_000, toMs: 1_200_000 }),
    span('m1', PEOPLE.Imre, { duty: 'post', fromMs: 0, toMs: 600_000, post: '4' }),
    span('m2', PEOPLE.Tamsin, { duty: 'post', fromMs: 600_000, toMs: 1_200_000, post: '4' }),
    span('w1', PEOPLE.Tamsin, { duty: 'wall', fromMs: 0, toMs: 600_000 }),
    span('w2', PEOPLE.Imre, { duty: 'wall', fromMs: 600_000, toMs: 1_200_000 }),
  ],
  stops: [],
  captain: { goMarginMs: 2_000, askForClockAtMs: 5_000, hotWorkInStops: false },
}

type Span = Plan['spans'][number]

export function span(
  lineId: string,
  person: string,
  rest: Pick<Span, 'duty' | 'fromMs' | 'toMs'> & Partial<Span>,
): Span {
  return { id: lineId, person, segment: 'one', ...rest }
}

export interface Documents {
  readonly rules?: readonly Rule[]
  readonly plan?: Plan | null
  /** What comes between the two segments. */
  readonly between?: 'break' | 'laneChange'
  /** The lap time of everybody. */
  readonly paceMs?: number
}

/** Rules, crew and plan are adopted one to three minutes before green; green itself is not given yet. */
export function smallMeeting(documents: Documents = {}): Pressing {
  const pressing = new Pressing()
  const rules = regulations(documents.rules)
  const programme = rules.programme.map((item) =>
    item.id === 'rest' ? { ...item, kind: documents.between ?? ('break' as const) } : item,
  )
  adopt(pressing, { document: 'rules', content: { ...rules, programme } })
  adopt(pressing, { document: 'crew', content: crew(documents.paceMs) })
  if (documents.plan !== null)
    adopt(pressing, { document: 'plan', content: documents.plan ?? plan })
  return pressing
}

export interface ToAdopt {
  readonly document: DocumentName
  readonly content: unknown
  readonly version?: number
  readonly at?: number
  readonly appliesFrom?: number
  readonly as?: 'correction' | 'change'
  readonly sha?: string
  readonly device?: string
}

export function adopt(pressing: Pressing, what: ToAdopt): string {
  const { document, content, version = 1, at = GREEN - MINUTE, as = 'change' } = what
  const sha256 = (what.sha ?? 'a').repeat(64)
  const appliesFrom = what.appliesFrom ?? at
  const body = { document, content, version, sha256, appliesFrom, as }
  const how = { role: 'captain', ...(what.device ? { device: what.device } : {}) } as const
  return pressing.by(how).press(at, 'adopted.1', body)
}

export function policy(
  clock: 'segment' | 'stopMinimum' | 'driving' | 'repairLimit',
  does: 'runs' | 'holds' | 'startsAgain',
  under: 'trackCall' | 'redFlag' = 'trackCall',
): Rule {
  return { id: `${clock}-${under}`, kind: 'clockPolicy', value: { clock, under, does } }
}
