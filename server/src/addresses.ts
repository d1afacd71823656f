/** Where devices reach this server. */
import { isIP } from 'node:net'
import { networkInterfaces } from 'node:os'

/** Ports become known once it listens. */
export interface Listening {
  readonly host: string
  port: number
  httpsPort?: number | undefined
  readonly publicUrl?: string | undefined
}

/** Base addresses without a slash at the end, the likeliest for a phone first. */
export function addressesOf({ host, port, httpsPort, publicUrl }: Listening): readonly string[] {
  const hosts = isEverywhere(host) ? [...localAddresses(), 'localhost'] : [inUrl(host)]
  const open = hosts.map((name) => `http://${name}:${String(port)}`)
  const sealed =
    httpsPort === undefined ? [] : hosts.map((name) => `https://${name}:${String(httpsPort)}`)
  return [...(publicUrl === undefined ? [] : [new URL(publicUrl).origin]), ...open, ...sealed]
}

/** Where this process finds itself. */
export function ownAddressOf({ host, port }: Listening): string {
  return `http://${isEverywhere(host) ? '127.0.0.1' : inUrl(host)}:${String(port)}`
}

/** IPv4 addresses on the networks this machine is in. */
export function localAddresses(): readonly string[] {
  return Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address)
}

function isEverywhere(host: string): boolean {
  return host === '0.0.0.0' || host === '::'
}

function inUrl(host: string): string {
  return isIP(host) === 6 ? `[${host}]` : host
}
