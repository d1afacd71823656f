import type { Me } from '@pitlamp/contract'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { v7 as uuidV7 } from 'uuid'
import { expect, test } from 'vitest'
import { openBench } from '../app-bench.ts'
import { readConfig, type Config } from '../config.ts'
import { addressFile, inviteCaptain } from './invite-command.ts'

const configFor = (data: string) => readConfig(['--data', data], {}) as Config

test('beside a running server it prints a link that makes one device a captain’s', async () => {
  const bench = await openBench()
  await bench.device('captain')
  const { data } = bench.house.deps
  writeFileSync(addressFile(data), JSON.stringify([bench.url]))
  let said = ''
  await inviteCaptain('captain', configFor(data), { write: (text) => (said += text) })
  const [, url, code] = /(http:\S+)\/join#(\S+)/.exec(said) ?? []
  expect(url).toBe(bench.url)
  const join = () =>
    bench.ask('POST /api/join', { body: { code, device: uuidV7(), name: 'New tablet' } })
  expect((await join()).body).toMatchObject({ device: { role: 'captain' } })
  expect((await join()).status).toBe(403)
  await bench.close()
})

test('with the name of a team it lets in that team’s captain, and founds the team the first time', async () => {
  const bench = await openBench()
  const { data } = bench.house.deps
  const joinedTeam = async () => {
    let said = ''
    const config = readConfig(['--data', data, '--team', 'Night Shift'], {}) as Config
    await inviteCaptain('captain', config, { write: (text) => (said += text) })
    const code = /join#(\S+)/.exec(said)?.[1]
    const body = { code, device: uuidV7(), name: 'A tablet' }
    return ((await bench.ask('POST /api/join', { body })).body as Me).team
  }
  const first = await joinedTeam()
  expect(first.name).toBe('Night Shift')
  expect(first.id).not.toBe(bench.house.deps.team)
  expect(await joinedTeam()).toEqual(first)
  await bench.close()
})

test('it says what is missing', async () => {
  const data = mkdtempSync(join(tmpdir(), 'pitlamp-'))
  const silent = { write: () => undefined }
  await expect(inviteCaptain(undefined, configFor(data), silent)).rejects.toThrow(
    'invite -- captain',
  )
  await expect(inviteCaptain('captain', configFor(data), silent)).rejects.toThrow('npm start')
  rmSync(data, { recursive: true })
})
