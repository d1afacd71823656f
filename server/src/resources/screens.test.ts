import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBench, refusalOf, type AppBench } from '../app-bench.ts'

let bench: AppBench
let web: string
beforeAll(async () => {
  web = mkdtempSync(join(tmpdir(), 'pitlamp-web-'))
  mkdirSync(join(web, 'assets'))
  writeFileSync(join(web, 'index.html'), '<!doctype html><title>Screens</title>')
  writeFileSync(join(web, 'assets', 'wall-3f9a.js'), `// ${'long '.repeat(500)}`)
  bench = await openBench({ web })
})
afterAll(async () => {
  await bench.close()
  rmSync(web, { recursive: true })
})

test('W1 every address of a screen is the same page, asked for anew each time', async () => {
  for (const path of ['/', '/join', '/meetings/some/wall', '/team', '/plan']) {
    const page = await bench.ask(`GET ${path}`)
    expect([page.status, page.type, page.headers.get('cache-control')], path).toEqual([
      ...[200, 'text/html; charset=utf-8', 'no-cache'],
    ])
    expect(page.body).toContain('<title>Screens</title>')
  }
})

test('W2 what has a hash in its name is kept for ever, and is sent compressed', async () => {
  const script = await bench.ask('GET /assets/wall-3f9a.js')
  expect(script.headers.get('cache-control')).toBe('public, max-age=31536000, immutable')
  expect(script.headers.get('content-encoding')).toBe('gzip')
  expect(refusalOf(await bench.ask('GET /assets/gone-1234.js'))).toBe('404 notFound')
})

test('W3 pages load from here only, nothing inline, and nothing asks for HTTPS', async () => {
  const { headers } = await bench.ask('GET /')
  const policy = headers.get('content-security-policy') ?? ''
  expect(policy).toMatch(/^default-src 'none';script-src 'self';style-src 'self';/)
  expect(policy).toContain("connect-src 'self' ws: wss:")
  expect(policy).not.toMatch(/unsafe|upgrade-insecure|\*/)
  expect(headers.get('strict-transport-security')).toBeNull()
})

test('W4 a server whose screens are not built says how to build them', async () => {
  const bare = await openBench({ web: join(web, 'nowhere') })
  const page = await bare.ask('GET /')
  expect(page.status).toBe(503)
  expect(page.body).toContain('npm start')
  await bare.close()
})
