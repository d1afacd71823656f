/** The tray of devices that were taken out: what they kept, and what becomes of it. */
import { appendedSchema, leftAsideSchema, traySchema, type DecideTray } from '@pitlamp/contract'
import { ask } from './ask.ts'

export const askTray = () => ask(traySchema, 'GET /api/tray')
export const takeIn = (body: DecideTray) => ask(appendedSchema, 'POST /api/tray/take-in', body)
export const leaveAside = (body: DecideTray) =>
  ask(leftAsideSchema, 'POST /api/tray/leave-aside', body)
