/** A new meeting that begins with what another one was laid down with: its rules, its crew, its car. */
import type { Meeting as Info } from '@pitlamp/contract'
import { documentSchemas, type Regulations } from '@pitlamp/race'
import type { Reply } from '../../api/ask.ts'
import { askDraft, saveDraft } from '../../api/drafts.ts'
import { makeMeeting } from '../../api/team.ts'

const CARRIED = ['rules', 'crew', 'car'] as const
const LONGEST_NAME = 80

/** `Lantern Forty` → `Lantern Forty 2` → `Lantern Forty 3` */
export function nextName(name: string, taken: readonly string[]): string {
  const [, stem = name, count = '1'] = /^(.*\S)\s+(\d{1,3})$/.exec(name) ?? []
  for (let next = Number(count) + 1; ; next += 1) {
    const fresh = `${stem.slice(0, LONGEST_NAME - 4)} ${next}`
    if (!taken.includes(fresh)) return fresh
  }
}

/** Times of a day that is over are left out: the programme keeps its order and its lengths. */
export function rulesFor(rules: Regulations, name: string, nowMs: number): Regulations {
  const { midnightAt, programme, ...rest } = rules
  const isOver = programme.every(({ plannedAt = 0 }) => plannedAt < nowMs)
  return {
    ...{ ...rest, name },
    ...(isOver || midnightAt === undefined ? {} : { midnightAt }),
    programme: isOver ? programme.map(({ plannedAt: _, ...item }) => item) : programme,
  }
}

export interface CarryOver {
  readonly from: Info
  readonly id: string
  readonly name: string
  readonly nowMs: number
}

/** What was never written down for the first is left for the second to write. */
export async function carryOver({ from, id, name, nowMs }: CarryOver): Promise<Reply<Info>> {
  const drafts = await Promise.all(CARRIED.map((document) => askDraft(from.id, document)))
  const lost = drafts.find((reply) => 'failed' in reply && reply.failed.refusal === 'noServer')
  if (lost && 'failed' in lost) return lost
  const made = await makeMeeting({ id, name })
  if ('failed' in made) return made
  for (const [place, document] of CARRIED.entries()) {
    const reply = drafts[place]
    if (!reply || 'failed' in reply) continue
    const content =
      document === 'rules' ? newRules(reply.ok.content, name, nowMs) : reply.ok.content
    if (content === undefined) continue
    const saved = await saveDraft(id, document, { basedOn: 0, content })
    if ('failed' in saved) return saved
  }
  return made
}

function newRules(content: unknown, name: string, nowMs: number): Regulations | undefined {
  const rules = documentSchemas.rules.safeParse(content).data
  return rules && rulesFor(rules, name, nowMs)
}
