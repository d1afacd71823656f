import type { MeetingCopy } from './meeting-copy.ts'

/** One JSON object: each part on a line, and within lists each item. */
export function writeCopy(copy: MeetingCopy): string {
  const parts = Object.entries(copy).map(
    ([name, part]) => `${JSON.stringify(name)}: ${lines(part)}`,
  )
  return `{\n${parts.join(',\n')}\n}\n`
}

function lines(part: unknown): string {
  if (!Array.isArray(part) || part.length === 0) return JSON.stringify(part)
  return `[\n${part.map((item) => JSON.stringify(item)).join(',\n')}\n]`
}
