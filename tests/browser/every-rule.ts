/** Regulations that say a rule of every kind, with names as long as German ones, and one that cannot hold. */
import {
  partsOf,
  RULE_KINDS,
  SENTENCES,
  type DocumentContent,
  type Part,
  type Rule,
} from '@pitlamp/race'

const HOUR_MS = 3_600_000
const SEGMENTS = 24

export function everyRule(): DocumentContent<'rules'> {
  const programme = Array.from({ length: SEGMENTS }, (_, index) => [
    {
      id: `s${index + 1}`,
      kind: 'segment' as const,
      length: { by: 'time' as const, lengthMs: 3_300_000 },
      lane: (index % 6) + 1,
    },
    { id: `l${index + 1}`, kind: 'laneChange' as const, lengthMs: 300_000 },
  ]).flat()
  return {
    name: 'Vierundzwanzigstundenlanglaufmeisterschaft der Modellrennbahnen',
    place: 'Mehrzweckhalle am Donaudampfschifffahrtsgesellschaftsplatz',
    timeZone: 'Europe/Berlin',
    programme: programme.slice(0, -1),
    rules: [
      {
        ...{ id: 'clash', kind: 'drivingTime', clause: '4.2' },
        value: { atLeastMs: 3 * HOUR_MS, atMostMs: 2 * HOUR_MS },
      },
      ...RULE_KINDS.map(({ kind }, index) => ruleOf(kind, index)),
    ],
  }
}

/** Every other one says all it can. */
function ruleOf(kind: Rule['kind'], index: number): Rule {
  const value: Record<string, unknown> = { ...SENTENCES[kind].start }
  if (index % 2 === 1) {
    for (const [name, part] of Object.entries(partsOf(kind))) value[name] ??= something(part)
  }
  const words =
    index % 9 === 0
      ? 'Die Einhaltung der Mindeststandzeit wird von der Rennleitung überwacht; Verstöße werden geahndet.'
      : undefined
  return { id: `k${index}`, kind, value, clause: `${index + 1}.${index % 4}`, words } as Rule
}

function something(part: Part): unknown {
  if (part.of) return part.of[0]
  const values: Partial<Record<Part['is'], unknown>> = {
    duration: 1_800_000,
    share: 125,
    category: 'Nachwuchsfahrer',
    yesNo: true,
    segments: ['s5', 's6', 's7'],
    counts: [25, 18, 15, 12, 10],
  }
  return values[part.is] ?? 3
}
