/** Looking up lines and segments by their ids, for words about them. */
import type { LogLine, Regulations } from '@pitlamp/race'

export function byId(log: readonly LogLine[]): ReadonlyMap<string, LogLine> {
  return new Map(log.map((line) => [line.entry.id, line]))
}

export function segmentNames(rules: Regulations | undefined): ReadonlyMap<string, string> {
  const segments = (rules?.programme ?? []).filter((item) => item.kind === 'segment')
  return new Map(segments.map(({ id, name }, index) => [id, name ?? `segment ${index + 1}`]))
}
