import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'

const house = [
  ...['README.md', 'DEVELOPERS.md', 'package.json', 'package-lock.json', 'tsconfig.json'],
  ...['packages', 'server', 'web', 'tests', 'seeds', 'docker-compose.yml'],
]
/** Their tools look for these nowhere else. */
const tools = [
  ...['.git', '.gitignore', '.ci', '.prettierrc', '.prettierignore'],
  ...['eslint.config.js', 'vitest.config.ts', 'knip.json'],
  ...['Dockerfile', '.dockerignore', '.env.example'],
]
const made = ['node_modules', 'build', 'data', '.cache', '.env']

it('holds at the top only the house, what its tools insist on, and what is made', () => {
  const names = readdirSync(join(import.meta.dirname, '../..'))
  const known = [...house, ...tools, ...made]
  expect(names.filter((name) => !known.includes(name) && !name.endsWith('.log'))).toEqual([])
})
