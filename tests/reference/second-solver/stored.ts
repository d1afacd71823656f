/** The stored models: problems as they are given to `plan`, and what another solver found to be the most laps. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Problem } from '@pitlamp/planner'

export interface Stored {
  readonly about: string
  readonly optimumLaps: number
  readonly found: { readonly with: string; readonly on: string; readonly by: string }
  readonly problem: Problem
}

const FOLDER = join(import.meta.dirname, 'models')

export const MODELS: readonly string[] = readdirSync(FOLDER)
  .map((file) => file.replace(/\.json$/, ''))
  .sort()

export function stored(model: string): Stored {
  return JSON.parse(readFileSync(join(FOLDER, `${model}.json`), 'utf8')) as Stored
}
