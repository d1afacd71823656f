/** Findings as a test reads them. */
import type { Finding } from '../findings.ts'

/** Verdict, value and margin, times in minutes, and who is concerned. */
export function verdicts(findings: readonly Finding[]) {
  return findings.map(({ verdict, unit, value, margin, people }) => {
    const by = unit === 'ms' ? 60_000 : 1
    return [verdict, value / by, margin / by, ...people]
  })
}

export function sentences(findings: readonly Finding[]): readonly string[] {
  return findings.map(({ sentence }) => sentence)
}
