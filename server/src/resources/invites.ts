import { askInviteSchema, inviteSchema } from '@pitlamp/contract'
import { hashOf, newLinkCode, newTypedCode } from '../access/tokens.ts'
import { holderIn, type Resource } from './guarded.ts'
import { responses } from './problems.ts'

/** A QR is shown for two minutes, then the Team screen asks for a new one. */
const QR_SHOWN_MS = 120_000
/** Who scanned it in the last moment still has to load the page: common practice, no source. */
const QR_GRACE_MS = 30_000
const TYPED_VALID_MS = 600_000

/** A captain asks for a code. It is said once, here, and kept as a hash only. */
export const inviteRoutes: Resource = (app, { storage, time, addresses }) => {
  const schema = { body: askInviteSchema, response: responses(inviteSchema) }
  app.post('/invites', { schema, config: { asks: { do: 'invite' } } }, async (request) => {
    const { role, as } = request.body
    const nowMs = time.now()
    const code = as === 'qr' ? newLinkCode() : newTypedCode()
    const validUntil = Math.round(nowMs + (as === 'qr' ? QR_SHOWN_MS : TYPED_VALID_MS))
    await storage.run('makeInvite', {
      team: holderIn(request).team.id,
      codeHash: hashOf(code),
      role,
      kind: as,
      validUntil: as === 'qr' ? validUntil + QR_GRACE_MS : validUntil,
      nowMs,
    })
    return {
      code,
      role,
      validUntil,
      links: addresses().map((address) => `${address}/join#${code}`),
    }
  })
}
