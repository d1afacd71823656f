/** The segments of regulations that are being written, as planning screens name and measure them. */
import { known, ruleValue, type Regulations, type RuleValue, type SegmentItem } from '@pitlamp/race'

export function segmentsIn({ programme }: Regulations): readonly SegmentItem[] {
  return programme.filter((item) => item.kind === 'segment')
}

/** `Segment 2`, or its own name. */
export function segmentName(rules: Regulations, id: string): string {
  const segments = segmentsIn(rules)
  const index = segments.findIndex((segment) => segment.id === id)
  return segments[index]?.name ?? (index < 0 ? 'A segment that is gone' : `Segment ${index + 1}`)
}

/** Undefined for a segment that is gone, or counts laps. */
export function lengthOf(rules: Regulations, id: string): number | undefined {
  const segment = segmentsIn(rules).find((segment) => segment.id === id)
  return segment?.length.by === 'time' ? segment.length.lengthMs : undefined
}

type Window = Exclude<RuleValue<'stopWindows'>['windows'], 'notKnownYet'>[number]

export function windowsOf({ rules }: Regulations): readonly Window[] {
  return known(ruleValue(rules, 'stopWindows')?.windows) ?? []
}
