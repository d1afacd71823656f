/** What each refusal means for the outbox. A new refusal without a line here does not compile. */
import type { Refusal } from '@pitlamp/contract'

export type Meaning =
  /** This entry will never be taken as it is: set aside with its sentence. */
  | 'entryRefused'
  /** Nothing in this meeting is taken from this device: the whole batch is set aside. */
  | 'batchRefused'
  /** The server cannot just now: nobody's fault, the same again later. */
  | 'later'
  /** Less at once. */
  | 'smaller'
  /** Nothing can be sent before this device has connected anew. */
  | 'stop'
  /** Something went wrong with this attempt; it counts. */
  | 'failure'

export const MEANING: Readonly<Record<Refusal, Meaning>> = {
  malformed: 'entryRefused',
  tooLarge: 'entryRefused',
  otherBody: 'entryRefused',
  roleMayNot: 'entryRefused',
  otherDevice: 'entryRefused',
  otherMeeting: 'batchRefused',
  revoked: 'batchRefused',
  notSaved: 'later',
  tooManyRequests: 'later',
  batchTooLarge: 'smaller',
  notJoined: 'stop',
  otherProtocol: 'stop',
  malformedRequest: 'failure',
  serverFault: 'failure',
  staleDocument: 'failure',
  codeUnknown: 'failure',
  tooManyTries: 'failure',
  notFound: 'failure',
  wallNotGiven: 'failure',
  wrongOrigin: 'failure',
}
