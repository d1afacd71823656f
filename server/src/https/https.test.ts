import { X509Certificate } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { get } from 'node:https'
import type { IncomingMessage } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { openBench } from '../app-bench.ts'
import { openAuthority } from './authority.ts'

let data: string
beforeEach(() => {
  data = mkdtempSync(join(tmpdir(), 'pitlamp-'))
})
afterEach(() => rmSync(data, { recursive: true }))

test('the authority is made once, may only sign servers, and its key is the owner’s', async () => {
  const authority = await openAuthority(data)
  const certificate = new X509Certificate(authority.certificate)
  expect(certificate.ca).toBe(true)
  expect(certificate.verify(certificate.publicKey)).toBe(true)
  expect((await openAuthority(data)).certificate).toBe(authority.certificate)
  expect(statSync(join(data, 'authority', 'authority.key')).mode & 0o777).toBe(0o600)
})

test('the server’s certificate is kept while the addresses stay and renewed when they change', async () => {
  let names = ['localhost', '192.0.2.7']
  const authority = await openAuthority(data, () => names)
  const first = await authority.serverPair()
  expect(await authority.serverPair()).toEqual(first)
  names = [...names, '192.0.2.8']
  const next = new X509Certificate((await authority.serverPair()).certificate)
  expect(next.subjectAltName).toBe('DNS:localhost, IP Address:192.0.2.7, IP Address:192.0.2.8')
  expect(next.checkIssued(new X509Certificate(authority.certificate))).toBe(true)
  // At most 398 days, or browsers refuse it.
  const days = (Date.parse(next.validTo) - Date.parse(next.validFrom)) / 86_400_000
  expect(days).toBeLessThanOrEqual(398)
})

test('a device that trusts the authority reads over HTTPS what it reads over HTTP, with a sealed cookie', async () => {
  const bench = await openBench({ httpsPort: 0 })
  const authority = await bench.ask('GET /authority.crt')
  expect(authority.type).toBe('application/x-x509-ca-cert')
  const sealed = bench.house.deps.addresses().find((address) => address.startsWith('https:')) ?? ''
  const answer = await new Promise<IncomingMessage>((resolve, reject) => {
    get(`${sealed}/readyz`, { ca: authority.body as string, agent: false }, resolve).on(
      'error',
      reject,
    )
  })
  answer.resume()
  expect(answer.statusCode).toBe(200)
  const key = readFileSync(join(bench.house.deps.data, 'authority', 'authority.key'), 'utf8')
  expect(authority.body).not.toContain(key.split('\n')[1])
  await bench.close()
})

test('without --https there is no authority to download', async () => {
  const bench = await openBench()
  expect((await bench.ask('GET /authority.crt')).status).toBe(404)
  await bench.close()
})
