/** Everything that writes: an async function over an open transaction, so that every database runs the same. */
import { appendAll, type AppendAnswer, type AppendInput } from './append.ts'
import { bringIn } from './bring-in.ts'
import { foundTeam, join, makeInvite } from './access.ts'
import type { Trx } from './context.ts'
import { changeDevice, deviceSeen } from './devices.ts'
import { saveDraft } from './drafts.ts'
import { createMeeting, savePerson } from './meetings.ts'
import { makePlanLink, revokePlanLinks } from './plan-links.ts'
import { leaveAside, takeIn } from './decide-tray.ts'
import { beat, endProcess, keepScreens } from './processes.ts'
import { beginTry, dropTicket, forgiveTries, keepTicket } from './shared-access.ts'
import { returnWall, takeWall } from './wall.ts'
import { emptyProbe, fillProbe, keepTime, raiseMark } from './server-time.ts'

const single = {
  foundTeam,
  makeInvite,
  join,
  changeDevice,
  deviceSeen,
  takeWall,
  returnWall,
  takeIn,
  leaveAside,
  createMeeting,
  bringIn,
  saveDraft,
  savePerson,
  makePlanLink,
  revokePlanLinks,
  keepTime,
  raiseMark,
  beat,
  keepScreens,
  endProcess,
  keepTicket,
  dropTicket,
  beginTry,
  forgiveTries,
  fillProbe,
  emptyProbe,
} as const
type Single = typeof single

export type CommandName = keyof Single | 'append'
export type Inputs = { [N in keyof Single]: Parameters<Single[N]>[1] } & { append: AppendInput }
export type Answers = { [N in keyof Single]: Awaited<ReturnType<Single[N]>> } & {
  append: AppendAnswer
}

export interface Command {
  readonly name: CommandName
  readonly input: unknown
}

/** Runs commands of one name. Appends are taken all at once, everything else one by one. */
export async function perform(trx: Trx, commands: readonly Command[]): Promise<readonly unknown[]> {
  if (commands[0]?.name === 'append') {
    return appendAll(
      trx,
      commands.map((command) => command.input as AppendInput),
    )
  }
  const answers: unknown[] = []
  for (const { name, input } of commands) {
    if (name === 'append') throw new Error('A group holds commands of one name.')
    const run = single[name] as (trx: Trx, input: unknown) => Promise<unknown>
    answers.push(await run(trx, input))
  }
  return answers
}

/** Neighbours that can be taken at once, in order. */
export function groups(commands: readonly Command[]): readonly (readonly Command[])[] {
  const found: Command[][] = []
  for (const command of commands) {
    const last = found.at(-1)
    if (command.name === 'append' && last?.[0]?.name === 'append') last.push(command)
    else found.push([command])
  }
  return found
}
