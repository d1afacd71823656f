import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { v7 as uuidV7 } from 'uuid'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { inviteFirstCaptain } from '../access/captain.ts'
import { writeTicket } from '../access/tickets.ts'
import { openBench, refusalOf, type AppBench } from '../app-bench.ts'

let bench: AppBench
let nowMs: number
beforeEach(async () => {
  nowMs = Date.UTC(2030, 0, 1)
  bench = await openBench({ clocks: { wall: () => nowMs, monotonic: () => nowMs } })
})
afterEach(() => bench.close())

const joinWith = (code: string, device = uuidV7(), headers = {}) =>
  bench.ask('POST /api/join', { body: { code, device, name: 'A phone' }, headers })
const printed = async (isTTY: boolean) => {
  let text = ''
  await inviteFirstCaptain(bench.house.deps, { isTTY, write: (more) => (text += more) })
  return text
}
const inviteAs = async (as: 'qr' | 'typed') => {
  const captain = await bench.device('captain')
  const answer = await captain.ask('POST /api/invites', { body: { role: 'crew', as } })
  return answer.body as { code: string; validUntil: number; links: string[] }
}

test('A1 the first captain’s code goes to a terminal only, else to a file of the owner’s', async () => {
  const file = join(bench.house.deps.data, 'captain-code')
  const said = await printed(false)
  const code = readFileSync(file, 'utf8').trim()
  expect(statSync(file).mode & 0o777).toBe(0o600)
  expect(said).toContain(file)
  expect(said).not.toContain(code)
  // 128 bits in base64url: 22 characters.
  expect(code).toMatch(/^[\w-]{22}$/)
  const onTerminal = await printed(true)
  expect(onTerminal).toMatch(/\/join#[\w-]{22}\n/)
  expect(onTerminal).toMatch(/[▀▄█]{5}/)
})

test('A2 the first captain’s code lets in one captain, and no start prints another then', async () => {
  const link = /join#([\w-]+)/.exec(await printed(true))
  const first = await joinWith(link?.[1] ?? '')
  expect(first.body).toMatchObject({ device: { role: 'captain' }, team: { name: 'Our team' } })
  expect(refusalOf(await joinWith(link?.[1] ?? ''))).toBe('403 codeUnknown')
  expect(await printed(true)).toBe('')
})

test('A3 the token is a cookie that scripts cannot read, and only its hash is kept', async () => {
  const code = writeTicket(bench.house.deps.data, { simulator: false, onlyWithoutCaptain: false })
  const joined = await joinWith(code)
  const [cookie] = joined.headers.getSetCookie()
  expect(cookie).toMatch(
    /^pitlamp_device=[\w-]{43}; Max-Age=\d+; Path=\/; HttpOnly; SameSite=Strict$/,
  )
  const token = /=([\w-]{43});/.exec(cookie ?? '')?.[1] ?? 'none'
  expect(JSON.stringify(joined.body)).not.toContain(token)
  const { data } = bench.house.deps
  const files = readdirSync(data).filter((name) => statSync(join(data, name)).isFile())
  const kept = files.map((name) => readFileSync(join(data, name), 'latin1')).join('')
  expect(kept).not.toContain(token)
  expect(kept).not.toContain(code)
})

test('A4 a QR serves any number of devices while it is shown', async () => {
  const { code, links, validUntil } = await inviteAs('qr')
  expect(links).toEqual([`${bench.url}/join#${code}`])
  expect(validUntil).toBe(nowMs + 120_000)
  expect((await joinWith(code)).status).toBe(200)
  nowMs += 120_000
  expect((await joinWith(code)).body).toMatchObject({ device: { role: 'crew' } })
  // Half a minute of grace for who scanned it in the last moment.
  nowMs += 30_001
  expect(refusalOf(await joinWith(code))).toBe('403 codeUnknown')
})

test('A5 a typed code works once, however it is written, within ten minutes', async () => {
  const { code } = await inviteAs('typed')
  expect(code).toMatch(/^[34679ACDEFGHJKMNPQRTWXY]{8}$/)
  const written = ` ${code.slice(0, 4).toLowerCase()}-${code.slice(4)} `
  expect((await joinWith(written)).status).toBe(200)
  expect(refusalOf(await joinWith(code))).toBe('403 codeUnknown')
  const { code: late } = await inviteAs('typed')
  nowMs += 600_001
  expect(refusalOf(await joinWith(late))).toBe('403 codeUnknown')
})

test('A6 after five wrong typed codes an address waits ten minutes, and may scan a QR meanwhile', async () => {
  const [{ code: typed }, { code: qr }] = [await inviteAs('typed'), await inviteAs('qr')]
  for (let wrong = 0; wrong < 5; wrong += 1) {
    expect(refusalOf(await joinWith('AAAA3333'))).toBe('403 codeUnknown')
  }
  expect(refusalOf(await joinWith(typed))).toBe('429 tooManyTries')
  expect((await joinWith(qr)).status).toBe(200)
  nowMs += 599_999
  expect(refusalOf(await joinWith(typed))).toBe('429 tooManyTries')
  nowMs += 2
  expect(refusalOf(await joinWith(typed))).toBe('403 codeUnknown')
})

test('A7 nobody takes the place of a device by its id', async () => {
  const captain = await bench.device('captain')
  const { code } = await inviteAs('qr')
  expect(refusalOf(await joinWith(code, captain.id))).toBe('403 otherDevice')
  const again = await joinWith(code, captain.id, { cookie: captain.cookie })
  expect(again.body).toMatchObject({ device: { id: captain.id, role: 'captain' } })
  expect(refusalOf(await captain.ask('GET /api/me'))).toBe('401 notJoined')
})

test('A8 who is not invited gets nothing, and only a captain invites', async () => {
  expect(refusalOf(await bench.ask('GET /api/meetings'))).toBe('401 notJoined')
  const forged = { cookie: 'pitlamp_device=forged' }
  expect(refusalOf(await bench.ask('GET /api/me', { headers: forged }))).toBe('401 notJoined')
  const wall = await bench.device('pitWall')
  const body = { role: 'captain', as: 'qr' }
  expect(refusalOf(await wall.ask('POST /api/invites', { body }))).toBe('403 roleMayNot')
})
