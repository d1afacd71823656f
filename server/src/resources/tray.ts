import { timeMs, uuidV7 } from '@pitlamp/race'
import * as z from 'zod/mini'
import { holderIn, type Resource } from './guarded.ts'
import { responses } from './problems.ts'

const traySchema = z.object({
  lines: z.array(
    z.object({ meeting: uuidV7, device: uuidV7, receivedAt: timeMs, entry: z.unknown() }),
  ),
})

/** What revoked devices sent afterwards: the captain reads it and decides. */
export const trayRoutes: Resource = (app, { storage }) => {
  const schema = { response: responses(traySchema) }
  app.get('/tray', { schema, config: { asks: { do: 'manageDevices' } } }, async (request) => {
    return { lines: [...(await storage.read.tray(holderIn(request).team.id))] }
  })
}
