/** Where on the race clock something is, and who, as sentences say it. */
import type { Bench } from './bench.ts'
import { durationInWords } from './in-words.ts'

/** `0:20 of segment 1`. */
export function placeInWords(
  { segmentName }: Bench,
  { segment, clockMs }: { readonly segment: string; readonly clockMs: number },
): string {
  return `${durationInWords(clockMs)} of ${segmentName(segment)}`
}

/** `Ana`, `Ana and Ben`, `Ana, Ben and Cara`. */
export function namesInWords(names: readonly string[]): string {
  const last = names.at(-1) ?? 'nobody'
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`
}
