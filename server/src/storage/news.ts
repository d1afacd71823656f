/** What a transaction added to the log, one piece of news a meeting. */
import type { AppendAnswer, AppendInput } from './commands/append.ts'
import type { BringInInput } from './commands/bring-in.ts'
import type { DecideTrayInput } from './commands/decide-tray.ts'
import type { CommandName } from './commands/index.ts'
import type { News } from './port.ts'

export interface Answered {
  readonly name: CommandName
  readonly input: unknown
  readonly answer: unknown
}

/** The commands that add to a log. */
const ADDING: readonly CommandName[] = ['append', 'takeIn', 'bringIn']

export function newsOf(answered: readonly Answered[]): readonly News[] {
  const found = new Map<string, News>()
  for (const { name, input, answer } of answered) {
    if (!ADDING.includes(name)) continue
    const { news } = answer as Pick<AppendAnswer, 'news'>
    if (!news) continue
    const { meeting } = input as AppendInput | DecideTrayInput | BringInInput
    const before = found.get(meeting)
    const entries = before ? [...before.entries, ...news.entries] : news.entries
    found.set(meeting, { meeting, from: before?.from ?? news.from, to: news.to, entries })
  }
  return [...found.values()]
}
