import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import manifest from '../../package.json' with { type: 'json' }
import { namedButMissing, type Repository } from './documents.ts'

const root = join(import.meta.dirname, '../..')
const passedOver = ['node_modules', 'build', 'data', '.cache', '.git']

function filesBelow(folder: string): readonly string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    if (passedOver.includes(entry.name)) return []
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`
    return entry.isDirectory() ? filesBelow(path) : [path]
  })
}

describe('what a document names', () => {
  const small: Repository = {
    files: ['server/src/main.ts', 'README.md'],
    scripts: ['start', 'dev'],
  }
  const missing = (document: string) => namedButMissing(document, small)

  it('is found where it exists', () => {
    const named =
      '`server/src/main.ts` `server/src` `src/` `main.ts` [me](README.md#run) `npm run dev`'
    expect(missing(named)).toEqual([])
  })

  it('is reported where it does not', () => {
    expect(missing('`server/src/gone.ts`')).toEqual(['server/src/gone.ts'])
    expect(missing('`web`')).toEqual(['web'])
    expect(missing('`gone.ts` and `gone/`')).toEqual(['gone.ts', 'gone/'])
    expect(missing('[me](DEVELOPERS.md)')).toEqual(['DEVELOPERS.md'])
    expect(missing('    npm run gone\n    npm test')).toEqual(['npm run gone', 'npm run test'])
  })

  it('leaves addresses, options, patterns and other words alone', () => {
    const named =
      '`/healthz` `--data ./data` `packages/*/src` `zod/mini` [out](https://a.b/c.md) `npm ci`'
    expect(missing(named)).toEqual([])
  })
})

describe('the documents', () => {
  const repository: Repository = { files: filesBelow(''), scripts: Object.keys(manifest.scripts) }

  it.each(['README.md', 'DEVELOPERS.md'])('%s names only what is there', (name) => {
    expect(namedButMissing(readFileSync(join(root, name), 'utf8'), repository)).toEqual([])
  })
})
