/** What works is never removed, whatever the registry does: the start's own scripts, in a small copy. */
import { spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs'
import { readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'

const root = join(import.meta.dirname, '../..')
let copy = ''
const at = (path: string) => join(copy, path)
const write = (path: string, content: unknown) => {
  writeFileSync(at(path), typeof content === 'string' ? content : JSON.stringify(content))
}

/** A lock file that names one package more than is installed. */
beforeEach(() => {
  copy = mkdtempSync(join(tmpdir(), 'pitlamp-start-'))
  cpSync(join(root, 'server/start'), at('server/start'), { recursive: true })
  for (const folder of ['node_modules', 'build/server']) mkdirSync(at(folder), { recursive: true })
  symlinkSync(join(root, 'node_modules/better-sqlite3'), at('node_modules/better-sqlite3'), 'dir')
  const manifest = { name: 'small', version: '1.0.0', dependencies: { 'is-number': '7.0.0' } }
  write('package.json', manifest)
  write('package-lock.json', {
    ...{ name: 'small', version: '1.0.0', lockfileVersion: 3, requires: true },
    packages: { '': manifest, 'node_modules/is-number': { version: '7.0.0' } },
  })
  write('node_modules/.package-lock.json', { packages: {} })
  write('build/server/main.js', 'works')
})

afterEach(() => {
  rmSync(copy, { recursive: true, force: true })
})

function prepare(): { readonly status: number | null; readonly said: string } {
  const unreachable = {
    npm_config_registry: 'http://127.0.0.1:9',
    npm_config_cache: at('no-cache'),
    npm_config_fetch_retries: '0',
  }
  const { status, stdout, stderr } = spawnSync(process.execPath, [at('server/start/prepare.mjs')], {
    env: { ...process.env, ...unreachable },
    encoding: 'utf8',
  })
  return { status, said: stdout + stderr }
}

describe('with the registry out of reach, the start', () => {
  it('goes on with what is there, and says so', () => {
    const { status, said } = prepare()
    expect(said).toContain('Going on with those that are here.')
    expect(said).toContain('Starting what was built before.')
    expect(status).toBe(0)
    expect(existsSync(at('node_modules/better-sqlite3'))).toBe(true)
    expect(readFileSync(at('build/server/main.js'), 'utf8')).toBe('works')
  })

  it('fails with the reason where nothing works yet', () => {
    rmSync(at('node_modules'), { recursive: true })
    const { status, said } = prepare()
    expect(said).toMatch(/ECONNREFUSED[^]*could not be installed/)
    expect(status).toBe(1)
  })

  it('brings back what a swap that was cut off had put aside', () => {
    mkdirSync(at('.cache/previous'), { recursive: true })
    for (const folder of ['node_modules', 'build']) {
      renameSync(at(folder), at(`.cache/previous/${folder}`))
    }
    expect(prepare().status).toBe(0)
    expect(readFileSync(at('build/server/main.js'), 'utf8')).toBe('works')
  })

  it('asks nothing of the registry when the lock file names what is installed', () => {
    write('node_modules/.package-lock.json', {
      packages: { 'node_modules/is-number': { version: '7.0.0' } },
    })
    expect(prepare().said).not.toContain('Installing')
    expect(existsSync(at('node_modules/.pitlamp-installed'))).toBe(true)
  })
})
