/** X.509 certificates (RFC 5280) with P-256 keys: an authority's, and a server's signed by it. */
import '@abraham/reflection'
import {
  BasicConstraintsExtension,
  ExtendedKeyUsage,
  ExtendedKeyUsageExtension,
  KeyUsageFlags,
  KeyUsagesExtension,
  SubjectAlternativeNameExtension,
  SubjectKeyIdentifierExtension,
  X509Certificate,
  X509CertificateGenerator,
} from '@peculiar/x509'
import { createPrivateKey, webcrypto } from 'node:crypto'
import { isIP } from 'node:net'

/** Key and certificate, both PEM. */
export interface Pair {
  readonly key: string
  readonly certificate: string
}

const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const
const DAY_MS = 86_400_000
const AUTHORITY_DAYS = 3_650
/** Browsers refuse a server's certificate that is valid for more than 398 days. */
const SERVER_DAYS = 390
/** A device whose clock is behind still takes it. */
const BEFORE_DAYS = 1

export async function makeAuthority(name: string, nowMs: number): Promise<Pair> {
  const keys = await newKeys()
  const certificate = await X509CertificateGenerator.createSelfSigned({
    name: [{ CN: [name] }],
    keys,
    signingAlgorithm: ALGORITHM,
    ...validity(nowMs, AUTHORITY_DAYS),
    extensions: [
      new BasicConstraintsExtension(true, 0, true),
      new KeyUsagesExtension(KeyUsageFlags.keyCertSign | KeyUsageFlags.cRLSign, true),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  })
  return { key: await pemOf(keys.privateKey), certificate: certificate.toString('pem') }
}

/** For these names and addresses; the first is the certificate's own name. */
export async function makeServerCertificate(
  authority: Pair,
  names: readonly string[],
  nowMs: number,
): Promise<Pair> {
  const keys = await newKeys()
  const certificate = await X509CertificateGenerator.create({
    subject: [{ CN: [names[0] ?? 'localhost'] }],
    issuer: new X509Certificate(authority.certificate).subject,
    publicKey: keys.publicKey,
    signingKey: await keyOf(authority.key),
    signingAlgorithm: ALGORITHM,
    ...validity(nowMs, SERVER_DAYS),
    extensions: [
      new BasicConstraintsExtension(false, undefined, true),
      new KeyUsagesExtension(KeyUsageFlags.digitalSignature, true),
      new ExtendedKeyUsageExtension([ExtendedKeyUsage.serverAuth]),
      new SubjectAlternativeNameExtension(
        names.map((value) => ({
          type: isIP(value) === 0 ? ('dns' as const) : ('ip' as const),
          value,
        })),
      ),
    ],
  })
  return { key: await pemOf(keys.privateKey), certificate: certificate.toString('pem') }
}

function validity(nowMs: number, days: number) {
  return {
    notBefore: new Date(nowMs - BEFORE_DAYS * DAY_MS),
    notAfter: new Date(nowMs + days * DAY_MS),
  }
}

function newKeys(): Promise<webcrypto.CryptoKeyPair> {
  return webcrypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify'])
}

async function pemOf(key: webcrypto.CryptoKey): Promise<string> {
  const der = Buffer.from(await webcrypto.subtle.exportKey('pkcs8', key))
  return createPrivateKey({ key: der, format: 'der', type: 'pkcs8' })
    .export({ format: 'pem', type: 'pkcs8' })
    .toString()
}

function keyOf(pem: string): Promise<webcrypto.CryptoKey> {
  const der = createPrivateKey(pem).export({ format: 'der', type: 'pkcs8' })
  return webcrypto.subtle.importKey('pkcs8', der, ALGORITHM, false, ['sign'])
}
