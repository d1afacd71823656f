import { changeDeviceSchema, deviceSchema, devicesSchema } from '@pitlamp/contract'
import { uuidV7 } from '@pitlamp/race'
import * as z from 'zod/mini'
import type { Sockets } from '../sync/sockets.ts'
import { holderIn, type Resource } from './guarded.ts'
import { Refused, responses } from './problems.ts'

const params = z.object({ device: uuidV7 })

/** Who is in the team. A changed role is told to the device at once; a revoked device is cut off. */
export function deviceRoutes(sockets: Pick<Sockets, 'changed'>): Resource {
  return (app, { storage, time }) => {
    const list = { response: responses(devicesSchema) }
    app.get(
      '/devices',
      { schema: list, config: { asks: { do: 'manageDevices' } } },
      async (request) => {
        const devices = [...(await storage.read.devices(holderIn(request).team.id))]
        return { devices, nowMs: Math.round(time.now()) }
      },
    )

    const schema = { params, body: changeDeviceSchema, response: responses(deviceSchema) }
    const config = { asks: { do: 'manageDevices' } } as const
    app.patch('/devices/:device', { schema, config }, async (request) => {
      const team = holderIn(request).team.id
      const { device: id } = request.params
      const input = { team, device: id, change: request.body, nowMs: time.now() }
      const answer = await storage.run('changeDevice', input)
      if ('refused' in answer) throw new Refused(answer.refused)
      sockets.changed(team, answer.device, answer.wallGoneFrom)
      return answer.device
    })
  }
}
