/** Links that open a meeting's plan to people who have not joined. */
import type { Refused } from './access.ts'
import type { Done, Trx } from './context.ts'
import { ownsMeeting } from './meetings.ts'

interface PlanLinkInput {
  readonly team: string
  readonly meeting: string
  readonly nowMs: number
}

/** Another link; those made before stay as they are. */
export async function makePlanLink(
  trx: Trx,
  input: PlanLinkInput & { readonly codeHash: string },
): Promise<Done | Refused> {
  const { team, meeting, codeHash, nowMs } = input
  if (!(await ownsMeeting(trx, team, meeting))) return { refused: 'otherMeeting' }
  const row = { team, meeting, code_hash: codeHash, made_at: Math.round(nowMs), revoked_at: null }
  await trx.insertInto('plan_link').values(row).execute()
  return 'done'
}

/** Every link of the meeting ends; answers how many there were. */
export async function revokePlanLinks(
  trx: Trx,
  { team, meeting, nowMs }: PlanLinkInput,
): Promise<{ readonly revoked: number } | Refused> {
  if (!(await ownsMeeting(trx, team, meeting))) return { refused: 'otherMeeting' }
  const open = trx
    .updateTable('plan_link')
    .set({ revoked_at: Math.round(nowMs) })
    .where('meeting', '=', meeting)
    .where('revoked_at', 'is', null)
  const { numUpdatedRows } = await open.executeTakeFirst()
  return { revoked: Number(numUpdatedRows) }
}
