/** Why something was not taken: a closed list, each with one sentence for the person. */
import * as z from 'zod/mini'

const SENTENCES = {
  malformed:
    'This is not an entry Pitlamp can store. It stays on this device: look at it on the Log screen.',
  tooLarge: 'This entry is too long. It stays on this device: shorten it and press again.',
  otherBody:
    'An entry with this id is already saved with other content. The saved one stands; this one stays on this device.',
  roleMayNot:
    'This device may not record that. It stays on this device: ask the captain for another role.',
  otherMeeting: 'This meeting is not one of this device’s team. The entry stays on this device.',
  otherDevice: 'This entry was made by another device. It can only be sent from there.',
  revoked:
    'This device was taken out of the team. What it recorded was handed to the captain to decide on.',
  wallNotGiven:
    'The captain has not let this device take the wall of this meeting. Ask for it: it is a switch on the Team screen.',
  notSaved:
    'The server cannot write to its disk just now. Everything stays on this device and is sent again.',
  batchTooLarge:
    'That was too much at once; nothing of it was taken. It is sent again in smaller parts.',
  staleDocument:
    'Somebody saved this document meanwhile. Nothing was overwritten: both versions are below.',
  notJoined: 'This device has not joined a team. Scan the code on the captain’s Team screen.',
  codeUnknown: 'This code is not valid, or no longer. Ask for a new one.',
  tooManyTries: 'Too many wrong codes from this address. Wait ten minutes, or scan the QR instead.',
  notFound: 'There is nothing at this address.',
  wrongOrigin: 'This request came from another site and was not taken.',
  otherProtocol:
    'This screen is of another version than the server. Reload it; what it kept stays kept.',
  malformedRequest: 'The request does not fit what this address takes. Nothing was changed.',
  tooManyRequests: 'Too many requests from this device at once. Wait a moment; nothing was lost.',
  serverFault: 'Something went wrong on the server. What was saved is safe; try again.',
} as const

export type Refusal = keyof typeof SENTENCES
export const refusalSchema = z.enum(Object.keys(SENTENCES) as [Refusal, ...Refusal[]])

export function refusalSentence(refusal: Refusal): string {
  return SENTENCES[refusal]
}
