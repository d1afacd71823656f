/** Random tests run under the same seeds everywhere, and under one that changes with each commit. */
import { execFileSync } from 'node:child_process'

export const seeds: readonly number[] = [1, 20_260_101, seedOfCommit()]

/** Zero in a copy without history. */
function seedOfCommit(): number {
  try {
    const hash = execFileSync('git', ['rev-parse', 'HEAD'], {
      cwd: import.meta.dirname,
      stdio: ['ignore', 'pipe', 'ignore'],
    })
    return Number.parseInt(hash.toString().slice(0, 7), 16)
  } catch {
    return 0
  }
}
