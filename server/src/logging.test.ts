/**
 * N1  Each request and each message of a screen leaves a line with an id of its own.
 * N2  No line holds a code, a cookie, a name, a body or an address with an id in it.
 * N3  A fault is logged with its place, and without what a parser or a database quotes.
 * N4  At the usual level nothing is logged while all goes well.
 */
import { PROTOCOL_VERSION } from '@pitlamp/contract'
import { v7 as uuidV7 } from 'uuid'
import { expect, test } from 'vitest'
import { openBench, type AppBench } from './app-bench.ts'
import { loggerFor, type LogLevel } from './logging.ts'

interface Line {
  readonly reqId?: string
  readonly msg: string
  readonly route?: string
  readonly event?: string
  readonly status?: number
  readonly refusal?: string
  readonly entries?: object
  readonly err?: { readonly type: string; readonly message: string; readonly stack: string }
}

async function logging(level: LogLevel, drive: (bench: AppBench) => Promise<void>) {
  let text = ''
  const stream = { write: (line: string) => void (text += line) }
  const bench = await openBench({ log: { level, stream } })
  await drive(bench)
  await bench.close()
  const lines = text.split('\n').flatMap((line) => (line === '' ? [] : [JSON.parse(line) as Line]))
  return { text, lines }
}

/** Joins, appends and is refused, over HTTP and over a socket. @returns everything that may be in no line */
async function evening(bench: AppBench): Promise<readonly string[]> {
  const captain = await bench.device('captain')
  const meeting = await captain.meeting()
  const name = 'Ida Quill’s phone'
  const invite = await captain.ask('POST /api/invites', { body: { role: 'crew', as: 'typed' } })
  const { code } = invite.body as { readonly code: string }
  const device = uuidV7()
  const joined = await bench.ask('POST /api/join', { body: { code, device, name } })
  const cookie = joined.headers.getSetCookie()[0]?.split(';')[0] ?? ''
  await bench.ask('POST /api/join', { body: { code: 'WRNG3333', device: uuidV7(), name } })
  await bench.ask('GET /api/tray', { headers: { cookie } })
  await bench.ask('POST /api/people', { body: '{"name": "Tom Wick"', headers: { cookie } })
  const note = { kind: 'note.1', body: JSON.stringify({ words: 'The braid is gone' }) }
  const entry = captain.entry(note)
  await captain.ask(`POST /api/meetings/${meeting}/entries`, {
    body: { meeting, entries: [entry] },
  })
  const socket = captain.socket()
  await socket.emitWithAck('hello', { protocol: PROTOCOL_VERSION, meeting, after: 0 })
  await socket.emitWithAck('append', { meeting, entries: [entry, captain.entry(note)] })
  await socket.emitWithAck('append', { meeting: uuidV7(), entries: [captain.entry(note)] })
  const token = (from: string) => from.split('=')[1] ?? from
  return [
    ...[code, 'WRNG3333', name, 'Ida', 'Tom Wick', 'A captain’s device', 'braid'],
    ...[token(cookie), token(captain.cookie), meeting, device, captain.id, entry.id, '127.0.0.1'],
  ]
}

test('N1, N2: an evening leaves lines with ids and nothing of anybody', async () => {
  let secrets: readonly string[] = []
  const { text, lines } = await logging('info', async (bench) => {
    secrets = await evening(bench)
  })
  // Where the server listens is its own address.
  const said = text.replaceAll(/^.*Server listening.*$/gm, '')
  expect(secrets.filter((secret) => said.includes(secret))).toEqual([])
  const answered = lines.filter(({ msg }) => msg === 'answered')
  const ids = answered.map(({ reqId }) => reqId)
  expect(ids.every((id) => /^[0-9a-f-]{36}$/.test(id ?? ''))).toBe(true)
  expect(new Set(ids).size).toBe(answered.length)
  expect(answered.flatMap(({ route, status }) => (route ? [`${route} ${String(status)}`] : [])))
    // The captain’s own joining and meeting first.
    .toEqual([
      ...['/api/join 200', '/api/meetings 200', '/api/invites 200', '/api/join 200'],
      ...['/api/join 403', '/api/tray 403', '/api/people 403'],
      '/api/meetings/:meeting/entries 200',
    ])
  expect(answered.flatMap(({ event, entries }) => (event ? [[event, entries]] : []))).toEqual([
    ['hello', undefined],
    ['append', { duplicate: 1, recorded: 1 }],
    ['append', { otherMeeting: 1 }],
  ])
  const refused = lines.filter(({ msg }) => msg === 'refused')
  expect(refused.map(({ refusal }) => refusal)).toEqual(['codeUnknown', 'roleMayNot', 'roleMayNot'])
  expect(refused.every(({ reqId }) => ids.includes(reqId))).toBe(true)
})

test('N3: a fault says where and not what', () => {
  const { serializers } = loggerFor({ level: 'error' }) as {
    serializers: { err: (error: Error) => NonNullable<Line['err']> }
  }
  const broken = (text: string): Error => {
    try {
      JSON.parse(text)
    } catch (error) {
      return error as Error
    }
    throw new Error('It can be read.')
  }
  const quoted = serializers.err(broken('{"words": Ida Quill drives'))
  expect(quoted).toMatchObject({ type: 'SyntaxError', message: '' })
  expect(quoted.stack).toMatch(/^\s+at .*JSON\.parse/)
  const detail = Object.assign(new Error('duplicate key'), {
    code: '23505',
    detail: '(name)=(Ida)',
  })
  expect(serializers.err(detail)).toMatchObject({ message: 'duplicate key', code: '23505' })
  expect(JSON.stringify([quoted, serializers.err(detail)])).not.toContain('Ida')
})

test('N4: at the usual level an evening leaves nothing', async () => {
  const { text } = await logging('warn', async (bench) => {
    await evening(bench)
  })
  expect(text).toBe('')
})
