/** A new meeting that begins with what another one was laid down with: its rules, its crew, its car. */
import type { Meeting as Info } from '@pitlamp/contract'
import { documentSchemas, type Crew, type Regulations } from '@pitlamp/race'
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

/** Instants are those of the other meeting's day: the programme keeps its order and its lengths. */
export function rulesFor({ midnightAt: _, ...rules }: Regulations, name: string): Regulations {
  return {
    ...{ ...rules, name },
    programme: rules.programme.map(({ plannedAt: _at, ...item }) => item),
  }
}

/** Who is in it and what they wish for; when they were there, and hours they named, are of the other day. */
export function crewFor({ people }: Crew): Crew {
  return {
    people: people.map(({ there: _, restBlock, wishList, ...person }) => ({
      ...person,
      ...(restBlock ? { restBlock: { atLeastMs: restBlock.atLeastMs } } : {}),
      ...(wishList ? { wishList: wishList.filter(({ kind }) => kind !== 'notBetween') } : {}),
    })),
  }
}

export interface CarryOver {
  readonly from: Info
  readonly id: string
  readonly name: string
}

/** What was never written down for the first is left for the second to write. */
export async function carryOver({ from, id, name }: CarryOver): Promise<Reply<Info>> {
  const drafts = await Promise.all(CARRIED.map((document) => askDraft(from.id, document)))
  const lost = drafts.find((reply) => 'failed' in reply && reply.failed.refusal === 'noServer')
  if (lost && 'failed' in lost) return lost
  const made = await makeMeeting({ id, name })
  if ('failed' in made) return made
  for (const [place, document] of CARRIED.entries()) {
    const reply = drafts[place]
    if (!reply || 'failed' in reply) continue
    const content = carried(document, reply.ok.content, name)
    if (content === undefined) continue
    const saved = await saveDraft(id, document, { basedOn: 0, content })
    if ('failed' in saved) return saved
  }
  return made
}

function carried(document: (typeof CARRIED)[number], content: unknown, name: string): unknown {
  if (document === 'car') return content
  if (document === 'crew') {
    const crew = documentSchemas.crew.safeParse(content).data
    return crew && crewFor(crew)
  }
  const rules = documentSchemas.rules.safeParse(content).data
  return rules && rulesFor(rules, name)
}
