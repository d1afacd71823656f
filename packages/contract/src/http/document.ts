/** Drafts of a meeting's documents: versioned, with optimistic concurrency. No clock reads a draft. */
import * as z from 'zod/mini'
import { documentName, timeMs } from '@pitlamp/race'
import { problemSchema } from '../problem.ts'

export const draftSchema = z.object({
  document: documentName,
  /** 0 and no content while nothing was saved. */
  version: z.int(),
  content: z.optional(z.unknown()),
  savedAt: z.optional(timeMs),
})
export type Draft = z.infer<typeof draftSchema>

export const saveDraftSchema = z.strictObject({
  /** The version this one was made from. */
  basedOn: z.int().check(z.minimum(0)),
  content: z.unknown(),
})
export type SaveDraft = z.infer<typeof saveDraftSchema>

/** The answer to a stale write: nothing was overwritten, both versions are here. */
export const staleDraftSchema = z.extend(problemSchema, {
  current: draftSchema,
  yours: saveDraftSchema,
})
export type StaleDraft = z.infer<typeof staleDraftSchema>

/** A version that was kept. Bringing it back is saving its content again. */
export const draftVersionSchema = z.object({
  version: z.int(),
  savedAt: timeMs,
  /** The name of the device that saved it. */
  savedBy: z.string(),
})
export type DraftVersion = z.infer<typeof draftVersionSchema>

/** Newest first. */
export const draftVersionsSchema = z.object({ versions: z.array(draftVersionSchema) })
export type DraftVersions = z.infer<typeof draftVersionsSchema>
