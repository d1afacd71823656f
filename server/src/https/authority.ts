/** The installation's own authority, kept in the data folder, and the certificate it signs for this machine. */
import { X509Certificate } from 'node:crypto'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { isIP } from 'node:net'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { localAddresses } from '../addresses.ts'
import { makeAuthority, makeServerCertificate, type Pair } from './certificates.ts'

const RENEW_BEFORE_MS = 30 * 86_400_000

export interface Authority {
  /** PEM; a device that is to trust this server installs it. */
  readonly certificate: string
  /** A certificate for every name and address the machine has now: the kept one while it fits. */
  readonly serverPair: () => Promise<Pair>
}

export async function openAuthority(
  data: string,
  names: () => readonly string[] = namesOfThisMachine,
): Promise<Authority> {
  const folder = join(data, 'authority')
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  const authority =
    readPair(folder, 'authority') ??
    writePair(folder, 'authority', await makeAuthority(`Pitlamp on ${hostname()}`, Date.now()))
  return {
    certificate: authority.certificate,
    async serverPair() {
      const wanted = names()
      const kept = readPair(folder, 'server')
      if (kept && fits(kept, authority, wanted)) return kept
      return writePair(folder, 'server', await makeServerCertificate(authority, wanted, Date.now()))
    },
  }
}

/** Names first, then addresses, in an order that does not depend on the system's. */
export function namesOfThisMachine(): readonly string[] {
  const own = hostname().toLowerCase()
  const names = new Set(['localhost', own, `${own}.local`, '127.0.0.1', '::1', ...localAddresses()])
  return [...names].sort((a, b) => isIP(a) - isIP(b) || (a < b ? -1 : 1))
}

function fits(pair: Pair, authority: Pair, wanted: readonly string[]): boolean {
  const certificate = new X509Certificate(pair.certificate)
  const signed = certificate.verify(new X509Certificate(authority.certificate).publicKey)
  const lasts = Date.parse(certificate.validTo) - Date.now() > RENEW_BEFORE_MS
  const covers = (name: string) =>
    isIP(name) === 0 ? certificate.checkHost(name) : certificate.checkIP(name)
  return signed && lasts && wanted.every((name) => covers(name) !== undefined)
}

function readPair(folder: string, name: string): Pair | undefined {
  try {
    const read = (ending: string) => readFileSync(join(folder, `${name}.${ending}`), 'utf8')
    return { key: read('key'), certificate: read('crt') }
  } catch {
    return undefined
  }
}

function writePair(folder: string, name: string, pair: Pair): Pair {
  writeFileSync(join(folder, `${name}.key`), pair.key, { mode: 0o600 })
  writeFileSync(join(folder, `${name}.crt`), pair.certificate)
  return pair
}
