/** What the processes over one database say of themselves: that they live, and which screens they serve. */
import { alone } from '../is-postgres.ts'
import type { Done, Trx } from './context.ts'

/** A process that was silent for so long is gone, and its screens with it. Common practice, no source. */
export const PROCESS_SILENT_MS = 6_000

export interface ProcessInput {
  readonly process: string
  readonly nowMs: number
}

export interface Beat {
  /** It was not known, or no longer: what it shows has to be shown again. */
  readonly fresh: boolean
  /** Meetings in which others were shown that are gone. */
  readonly gone: readonly string[]
}

export async function beat(trx: Trx, { process, nowMs }: ProcessInput): Promise<Beat> {
  // After everybody was silent for a while, two would end each other.
  await alone(trx)
  const row = { id: process, seen_at: Math.round(nowMs) }
  const known = await trx
    .updateTable('process')
    .set(row)
    .where('id', '=', process)
    .executeTakeFirst()
  const fresh = known.numUpdatedRows === 0n
  if (fresh) await trx.insertInto('process').values(row).execute()
  const silent = await trx
    .selectFrom('process')
    .select('id')
    .where('seen_at', '<', row.seen_at - PROCESS_SILENT_MS)
    .orderBy('id')
    .execute()
  const gone = new Set<string>()
  for (const { id } of silent) for (const meeting of await endOf(trx, id)) gone.add(meeting)
  return { fresh, gone: [...gone] }
}

export interface ScreensInput extends ProcessInput {
  readonly meeting: string
  /** JSON. */
  readonly screens: string
}

export async function keepScreens(trx: Trx, input: ScreensInput): Promise<Done> {
  const { process, meeting, screens, nowMs } = input
  const row = { screens, told_at: Math.round(nowMs) }
  await trx
    .insertInto('presence')
    .values({ process, meeting, ...row })
    .onConflict((conflict) => conflict.columns(['meeting', 'process']).doUpdateSet(row))
    .execute()
  return 'done'
}

/** @returns meetings in which it showed screens */
export async function endProcess(
  trx: Trx,
  { process }: Pick<ProcessInput, 'process'>,
): Promise<{ readonly gone: readonly string[] }> {
  return { gone: await endOf(trx, process) }
}

async function endOf(trx: Trx, process: string): Promise<readonly string[]> {
  await trx.deleteFrom('process').where('id', '=', process).execute()
  const ended = await trx
    .deleteFrom('presence')
    .where('process', '=', process)
    .returning('meeting')
    .execute()
  return ended.map(({ meeting }) => meeting)
}
