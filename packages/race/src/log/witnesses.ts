/**
 * A press that states what the last one of its channel stated, from another device within ten seconds, is a
 * second witness. The holder is the first press of pit wall or captain, otherwise the first; its time counts.
 */
import type { Kind } from '../entry/kinds/index.ts'
import type { ReadEntry } from '../entry/read.ts'
import type { Role } from '../entry/envelope.ts'
import { holds, type Line } from './line.ts'
import { statementOf, type Statement } from './statements.ts'

/** Common practice, no source. */
const WITNESS_WITHIN_MS = 10_000

/** The last statement of a channel. One object a channel: the fold makes no waste. */
interface Group {
  first: Line
  holder: Line
  witnesses: Line[] | undefined
}

/**
 * Marks witnesses in lines that stand in log order; lines in `apart` begin anew. Answers which entry holds in
 * place of each witness, since later entries may name the witness (its fault, its penalty).
 */
export function findWitnesses(
  lines: readonly Line[],
  apart: ReadonlySet<Line>,
): ReadonlyMap<string, string> {
  const channels = new Map<string, Group>()
  const holders = new Map<string, string>()
  let kind: Kind | undefined
  let statement: Statement | undefined
  for (const line of lines) {
    if (!holds(line)) continue
    const entry = saidBy(line)
    // Entries of one kind come in runs.
    if (entry.kind !== kind) {
      kind = entry.kind
      statement = statementOf(kind)
    }
    if (!statement) continue
    const named = statement.channel(entry.body)
    const channel = (holders.size > 0 && holders.get(named)) || named
    const group = channels.get(channel)
    if (!group) channels.set(channel, { first: line, holder: line, witnesses: undefined })
    else if (!(apart.size > 0 && apart.has(line)) && bearsWitness(group, line, statement))
      join(group, line, holders)
    else begin(group, line)
  }
  return holders
}

function saidBy(line: Line): ReadEntry {
  return (line.corrected ?? line.entry) as ReadEntry
}

function begin(group: Group, line: Line): void {
  group.first = line
  group.holder = line
  group.witnesses = undefined
}

function bearsWitness(group: Group, line: Line, statement: Statement): boolean {
  const said = saidBy(group.first)
  const entry = saidBy(line)
  return (
    entry.kind === said.kind &&
    line.at - group.first.at <= WITNESS_WITHIN_MS &&
    !hasSaidIt(group, entry.device) &&
    statement.same(said.body, entry.body)
  )
}

function hasSaidIt({ holder, witnesses = [] }: Group, device: string): boolean {
  return holder.entry.device === device || witnesses.some((one) => one.entry.device === device)
}

function join(group: Group, line: Line, holders: Map<string, string>): void {
  const witnesses = (group.witnesses ??= [])
  if (isWalls(line.role) && !isWalls(group.holder.role)) {
    witnesses.push(group.holder)
    group.holder = line
  } else {
    witnesses.push(line)
  }
  for (const witness of witnesses) {
    witness.standing = 'secondWitness'
    witness.witnessOf = group.holder.entry.id
    holders.set(witness.entry.id, group.holder.entry.id)
  }
}

function isWalls(role: Role | undefined): boolean {
  return role === 'pitWall' || role === 'captain'
}
