import { appendedSchema, decideTraySchema, leftAsideSchema, traySchema } from '@pitlamp/contract'
import { holderIn, type Resource } from './guarded.ts'
import { responses } from './problems.ts'

/** What revoked devices sent afterwards: the captain reads it, takes it into the log or leaves it aside. */
export const trayRoutes: Resource = (app, { storage, time }) => {
  const config = { asks: { do: 'manageDevices' } } as const

  const list = { response: responses(traySchema) }
  app.get('/tray', { schema: list, config }, async (request) => {
    return { lines: [...(await storage.read.tray(holderIn(request).team.id))] }
  })

  const taking = { body: decideTraySchema, response: responses(appendedSchema) }
  app.post('/tray/take-in', { schema: taking, config }, async (request) => {
    const team = holderIn(request).team.id
    const { results } = await storage.run('takeIn', { ...request.body, team, nowMs: time.now() })
    return { results: [...results] }
  })

  const leaving = { body: decideTraySchema, response: responses(leftAsideSchema) }
  app.post('/tray/leave-aside', { schema: leaving, config }, async (request) => {
    const team = holderIn(request).team.id
    const { left } = await storage.run('leaveAside', { ...request.body, team, nowMs: time.now() })
    return { left: [...left] }
  })
}
