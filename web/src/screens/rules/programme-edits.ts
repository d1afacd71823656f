/** Changing the programme that is being written: items added, moved, taken out. Changes are made in place. */
import type { ProgrammeItem, Regulations } from '@pitlamp/race'
import { freshId } from './defaults.ts'

const HOUR_MS = 3_600_000
const TEN_MINUTES_MS = 600_000

/** As long as the segment before it: most meetings repeat theirs. */
export function addSegment({ programme }: Regulations): void {
  const lengths = programme.flatMap((item) =>
    item.kind === 'segment' && item.length.by === 'time' ? [item.length.lengthMs] : [],
  )
  const lengthMs = lengths.at(-1) ?? HOUR_MS
  programme.push({ id: freshId('s', programme), kind: 'segment', length: { by: 'time', lengthMs } })
}

export function addBreak({ programme }: Regulations): void {
  const lengths = programme.flatMap((item) => (item.kind === 'break' ? [item.lengthMs] : []))
  const lengthMs = lengths.at(-1) ?? TEN_MINUTES_MS
  programme.push({ id: freshId('b', programme), kind: 'break', lengthMs })
}

export function moveUp({ programme }: Regulations, index: number): void {
  const [item] = index > 0 ? programme.splice(index, 1) : []
  if (item) programme.splice(index - 1, 0, item)
}

const KIND_WORDS = {
  briefing: 'Briefing',
  practice: 'Practice',
  qualifying: 'Qualifying',
  scrutineering: 'Scrutineering',
  warmUp: 'Warm-up',
  lineUp: 'Line-up',
  laneChange: 'Lane change',
  break: 'Break',
} as const satisfies Record<Exclude<ProgrammeItem['kind'], 'segment'>, string>

/** `Segment 2`, counted among the segments; everything else by what it is. */
export function itemWords(programme: readonly ProgrammeItem[], item: ProgrammeItem): string {
  if (item.kind !== 'segment') return KIND_WORDS[item.kind]
  const segments = programme.filter(({ kind }) => kind === 'segment')
  return `Segment ${segments.indexOf(item) + 1}`
}
