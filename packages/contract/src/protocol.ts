/** Screens and server of different protocol versions refuse each other and say so. A test pins this to the wire. */
export const PROTOCOL_VERSION = 1

/** A batch the outbox sends at most, and what the server takes at most before it answers `batchTooLarge`. */
export const BATCH_ENTRIES = 50
export const BATCH_BYTES = 48 * 1024
export const BATCH_LIMIT_BYTES = 64 * 1024
/** Entries in one page of catch-up. */
export const PAGE_ENTRIES = 500
/** Probes are the heartbeat: this often, and this long without an answer means no server. */
export const PROBE_EVERY_MS = 2_000
export const SILENCE_MS = 3_000
