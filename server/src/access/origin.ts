/**
 * Which names this server answers to. A page of another site can make a browser send requests here, or let its
 * own name point here; both are told by Host and Origin, which have to agree and be ours.
 */
import { isIP } from 'node:net'
import { hostname } from 'node:os'

export interface Names {
  readonly publicUrl?: string
  /** The machine's own name. */
  readonly machine?: string
}

export interface Claimed {
  readonly host: string | undefined
  readonly origin: string | undefined
}

export function isOurs({ host, origin }: Claimed, names: Names): boolean {
  const asked = host === undefined ? undefined : parse(`http://${host}`)
  if (!asked || !isOurName(asked, names)) return false
  if (origin === undefined) return true
  const from = parse(origin)
  if (!from) return false
  if (names.publicUrl !== undefined && from.origin === new URL(names.publicUrl).origin) return true
  return (
    portOf(from, from.protocol) === portOf(asked, from.protocol) && from.hostname === asked.hostname
  )
}

function isOurName(url: URL, { publicUrl, machine = hostname() }: Names): boolean {
  const name = url.hostname.replace(/^\[|\]$/g, '')
  if (isIP(name) !== 0 || name === 'localhost') return true
  const own = machine.toLowerCase()
  if (name === own || name === `${own}.local` || name === own.split('.')[0]) return true
  return publicUrl !== undefined && name === new URL(publicUrl).hostname
}

/** A Host header leaves out the port of its scheme. */
function portOf(url: URL, scheme: string): string {
  if (url.port !== '') return url.port
  return scheme === 'https:' ? '443' : '80'
}

function parse(text: string): URL | undefined {
  return URL.canParse(text) ? new URL(text) : undefined
}
