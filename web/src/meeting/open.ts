/** Opens a meeting: from what this device has in store, and from the server only where that is not enough. */
import type { Me, Meeting as Info } from '@pitlamp/contract'
import type { Failure, Reply } from '../api/ask.ts'
import { askMe, askMeeting } from '../api/meeting.ts'
import { readKept } from './kept.ts'
import { Meeting } from './meeting.svelte.ts'
import { Memory } from './memory.ts'

export async function openMeeting(id: string): Promise<{ meeting: Meeting } | { failed: Failure }> {
  const memory = await Memory.open()
  const me = await whoAmI(memory)
  if ('failed' in me) return me
  const info = await whatIsIt(memory, id)
  if ('failed' in info) return info
  const device = me.ok.device.id
  const nothing = { device, confirmed: [], pending: [], setAside: [] }
  const kept = memory.store && (await readKept(memory.store, id, device).catch(() => undefined))
  return {
    meeting: new Meeting({
      memory,
      me: me.ok,
      info: info.ok,
      kept: kept ?? nothing,
      heard: await memory.heard(id),
      person: await memory.person(),
      wall: await memory.wall(),
      names: await memory.names(),
    }),
  }
}

async function whoAmI(memory: Memory): Promise<Reply<Me>> {
  const remembered = await memory.me()
  if (remembered) return { ok: remembered }
  const reply = await askMe()
  if ('ok' in reply) await memory.rememberMe(reply.ok)
  return reply
}

async function whatIsIt(memory: Memory, id: string): Promise<Reply<Info>> {
  const remembered = await memory.meeting(id)
  if (remembered) return { ok: remembered }
  const reply = await askMeeting(id)
  if ('ok' in reply) await memory.rememberMeeting(reply.ok)
  return reply
}
