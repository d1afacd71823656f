/** Changing the programme that is being written: items added, moved, given lanes. Changes are made in place. */
import { countInWords, type ProgrammeItem, type Regulations } from '@pitlamp/race'
import { freshId } from '../../planning/defaults.ts'
import { readDuration, writeDuration } from '../../planning/durations.ts'
import { lapsWords } from '../../parts/penalty-words.ts'

type OtherKind = Exclude<ProgrammeItem['kind'], 'segment'>

const HOUR_MS = 3_600_000
const TEN_MINUTES_MS = 600_000
const FIRST_LANES = 6

export const KIND_WORDS = {
  briefing: 'Briefing',
  practice: 'Practice',
  qualifying: 'Qualifying',
  scrutineering: 'Scrutineering',
  warmUp: 'Warm-up',
  lineUp: 'Line-up',
  laneChange: 'Lane change',
  break: 'Break',
} as const satisfies Record<OtherKind, string>

/** As long as the segment before it, and with lanes where that has one: most meetings repeat theirs. */
export function addSegment(
  { programme }: Regulations,
  taken: readonly { id: string }[] = [],
): void {
  const last = programme.filter((item) => item.kind === 'segment').at(-1)
  const length = last ? { ...last.length } : { by: 'time' as const, lengthMs: HOUR_MS }
  const lane = last?.lane === undefined ? {} : { lane: 'notDrawnYet' as const }
  programme.push({
    ...{ id: freshId('s', [...programme, ...taken]), kind: 'segment', length },
    ...lane,
  })
}

/** As long as the last of its kind; where there is none, ten minutes. */
export function addItem(
  { programme }: Regulations,
  kind: OtherKind,
  taken: readonly { id: string }[] = [],
): void {
  const lengths = programme.flatMap((item) => (item.kind === kind ? [item.lengthMs] : []))
  const lengthMs = lengths.at(-1) ?? TEN_MINUTES_MS
  programme.push({ id: freshId(kind[0] ?? 'i', [...programme, ...taken]), kind, lengthMs })
}

/** One place up (`-1`) or down (`1`), and nothing at either end. */
export function move({ programme }: Regulations, index: number, by: -1 | 1): void {
  const to = index + by
  if (to < 0 || to >= programme.length) return
  const [item] = programme.splice(index, 1)
  if (item) programme.splice(to, 0, item)
}

/** `Segment 2`, counted among the segments; everything else by what it is. */
export function itemWords(programme: readonly ProgrammeItem[], item: ProgrammeItem): string {
  if (item.kind !== 'segment') return KIND_WORDS[item.kind]
  const segments = programme.filter(({ kind }) => kind === 'segment')
  return `Segment ${segments.findIndex(({ id }) => id === item.id) + 1}`
}

export function hasLanes({ programme }: Regulations): boolean {
  return programme.some((item) => item.kind === 'segment' && item.lane !== undefined)
}

/** Every segment gets a lane that is not drawn yet. */
export function giveLanes({ programme }: Regulations): void {
  for (const item of programme) if (item.kind === 'segment') item.lane ??= 'notDrawnYet'
}

/** How many lanes there are to choose from: as many as the rules name, or six. */
export function laneCount({ rules, programme }: Regulations): number {
  const named = rules.map((rule) => (rule.kind === 'tracks' ? Number(rule.value.lanes) : 0))
  const used = programme.map((item) => (item.kind === 'segment' ? Number(item.lane) : 0))
  const most = Math.max(...[...named, ...used].filter((count) => count > 0), 0)
  return most === 0 ? FIRST_LANES : most
}

export function lengthText(item: ProgrammeItem): string {
  if (item.kind !== 'segment') {
    return item.lengthMs === undefined ? '' : writeDuration(item.lengthMs, 'min')
  }
  return item.length.by === 'time'
    ? writeDuration(item.length.lengthMs, 'h')
    : lapsWords(item.length.laps)
}

/** @returns whether it could be read */
export function setLength(item: ProgrammeItem, text: string): boolean {
  if (item.kind !== 'segment') {
    item.lengthMs = readDuration(text, 'min')
    return item.lengthMs !== undefined || text.trim() === ''
  }
  const laps = /^\s*(\d{1,6})\s*laps?\s*$/.exec(text)
  const lengthMs = readDuration(text, 'h')
  if (laps) item.length = { by: 'laps', laps: Number(laps[1]) }
  else if (lengthMs !== undefined) item.length = { by: 'time', lengthMs }
  return laps !== null || lengthMs !== undefined
}

/** `24 segments of 0:55, 23 lane changes of 5 min`: what stands in a long programme, without its order. */
export function programmeWords({ programme }: Regulations): string {
  const counts = new Map<string, number>()
  for (const item of programme) {
    const name = item.kind === 'segment' ? 'segment' : KIND_WORDS[item.kind].toLowerCase()
    const key = `${name}|${lengthText(item)}`
    counts.set(key, (counts.get(key) ?? 0) + 1)
  }
  return [...counts]
    .map(([key, count]) => {
      const [name = '', length = ''] = key.split('|')
      const what = countInWords(count, name, several(name))
      return length === '' ? what : `${what} of ${length}`
    })
    .join(', ')
}

function several(name: string): string {
  return name === 'practice' || /ing$/.test(name) ? `times ${name}` : `${name}s`
}
