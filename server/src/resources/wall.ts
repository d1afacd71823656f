import { meSchema, takeBackWallSchema } from '@pitlamp/contract'
import type { FastifyRequest } from 'fastify'
import * as z from 'zod/mini'
import { roleIn } from '../access/role-in.ts'
import type { Deps } from '../deps.ts'
import type { Sockets } from '../sync/sockets.ts'
import { holderIn, meetingIn, type Resource } from './guarded.ts'
import { meetingParams } from './meetings.ts'
import { Refused, responses } from './problems.ts'

const nothing = z.strictObject({})

/** A crew device takes the wall where the captain has let it, gives it back, or is asked back by the wall. */
export function wallRoutes(sockets: Pick<Sockets, 'changed'>): Resource {
  return (app, deps) => {
    const change = changeIn(deps, sockets)
    const own = { params: meetingParams, body: nothing, response: responses(meSchema) }
    const crews = { schema: own, config: { asks: { do: 'takeWall' } } } as const
    app.post('/meetings/:meeting/wall/take', crews, (request) =>
      change(request, { name: 'takeWall', device: holderIn(request).device.id }),
    )
    app.post('/meetings/:meeting/wall/give-back', crews, (request) =>
      change(request, { name: 'returnWall', device: holderIn(request).device.id }),
    )

    const schema = {
      params: meetingParams,
      body: takeBackWallSchema,
      response: responses(meSchema),
    }
    const walls = { schema, config: { asks: { do: 'takeBackWall' } } } as const
    app.post('/meetings/:meeting/wall/take-back', walls, (request) =>
      change(request, { name: 'returnWall', device: request.body.device }),
    )
  }
}

interface Change {
  readonly name: 'takeWall' | 'returnWall'
  readonly device: string
}

/** @returns the device that was changed, with its role in this meeting */
function changeIn({ storage, time }: Deps, sockets: Pick<Sockets, 'changed'>) {
  return async (request: FastifyRequest, { name, device }: Change) => {
    const { team } = holderIn(request)
    const { id: meeting } = meetingIn(request)
    const input = { team: team.id, device, meeting, nowMs: time.now() }
    const answer = await storage.run(name, input)
    if ('refused' in answer) throw new Refused(answer.refused)
    sockets.changed(team.id, answer.device, meeting)
    const { id, name: called } = answer.device
    return { device: { id, name: called, role: roleIn(answer.device, meeting) }, team }
  }
}
