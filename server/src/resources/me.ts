import { meSchema } from '@pitlamp/contract'
import { holderIn, type Resource } from './guarded.ts'
import { responses } from './problems.ts'

/** Which device this is, and of which team. */
export const meRoutes: Resource = (app) => {
  const route = {
    schema: { response: responses(meSchema) },
    config: { asks: { do: 'read' } },
  } as const
  app.get('/me', route, (request) => {
    const { device, team } = holderIn(request)
    return { device: { id: device.id, name: device.name, role: device.role }, team }
  })
}
