import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { configDefaults, defineConfig, type TestProjectConfiguration } from 'vitest/config'
import { seeds } from './tests/seeds.ts'

/** Files of random tests, which run once a seed. */
const random = ['packages', 'server', 'tests'].flatMap((folder) =>
  readdirSync(join(import.meta.dirname, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts') && !name.includes('node_modules'))
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((file) => readFileSync(join(import.meta.dirname, file), 'utf8').includes('fast-check')),
)
const exclude = [...configDefaults.exclude, ...random]

/**
 * Files share what they import: each for itself reads the same modules for longer than its tests take. No module
 * of ours keeps anything between calls that a test could trip over.
 */
const together = { isolate: false }

/** Whole servers and browsers: after everything else, since some of them measure how long things take. */
const oneAtATime = (groupOrder: number) => ({
  maxWorkers: 1,
  sequence: { groupOrder },
  testTimeout: 60_000,
  hookTimeout: 120_000,
})

const projects: TestProjectConfiguration[] = [
  {
    test: {
      ...together,
      name: 'unit',
      include: ['packages/**/*.test.ts', 'server/**/*.test.ts'],
      exclude,
      // Real stores and servers: on a busy machine with a slow disk they take their time.
      testTimeout: 30_000,
      hookTimeout: 60_000,
    },
  },
  {
    plugins: [svelte({ configFile: 'web/svelte.config.js' })],
    resolve: { conditions: ['browser'] },
    test: {
      ...together,
      name: 'web',
      environment: './tests/screen-environment.ts',
      include: ['web/**/*.test.ts'],
      server: { deps: { inline: ['svelte'] } },
    },
  },
  ...seeds.map((seed) => ({
    test: {
      ...together,
      name: `seed ${String(seed)}`,
      include: random,
      setupFiles: ['tests/seeded.ts'],
      env: { FC_SEED: String(seed) },
      testTimeout: 60_000,
    },
  })),
  {
    test: {
      name: 'house',
      include: ['tests/**/*.test.ts'],
      exclude: [...exclude, 'tests/browser/**'],
      ...oneAtATime(1),
    },
  },
  {
    test: {
      name: 'browser',
      // A second on a screen may take a second to turn over.
      expect: { poll: { timeout: 10_000 } },
      include: ['tests/browser/**/*.test.ts'],
      // Only looking at screens is done two at a time: nothing there is measured in time.
      maxConcurrency: 2,
      ...oneAtATime(2),
    },
  },
]

export default defineConfig({ test: { projects, maxWorkers: '100%' } })
