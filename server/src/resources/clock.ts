import { clockStandingSchema, settleClockSchema } from '@pitlamp/contract'
import type { Sockets } from '../sync/sockets.ts'
import { settleTime } from '../time/keep-time.ts'
import type { Resource } from './guarded.ts'
import { Refused, responses } from './problems.ts'

const SHARED = 'Several teams share this server’s clock: it is set on the machine, by its operator.'

/** How the server's clock stands, and the captain's press that sets it. */
export function clockRoutes(sockets: Pick<Sockets, 'tellClock'>): Resource {
  return (app, { storage, time }) => {
    const stands = { response: responses(clockStandingSchema) }
    app.get('/clock', { schema: stands, config: { asks: { do: 'read' } } }, () => time.standing())

    const schema = { body: settleClockSchema, response: responses(clockStandingSchema) }
    app.post(
      '/clock/settle',
      { schema, config: { asks: { do: 'settleClock' } } },
      async (request) => {
        const { epoch, shiftMs } = request.body
        if (await storage.read.isShared()) throw new Refused('roleMayNot', SHARED)
        if (epoch > time.epoch)
          throw new Refused('malformedRequest', 'epoch: there is no such epoch')
        // Two captains press at once: the clock is set once, and both see how it stands now.
        if (epoch < time.epoch) return time.standing()
        await settleTime(time, storage, shiftMs)
        sockets.tellClock()
        return time.standing()
      },
    )
  }
}
