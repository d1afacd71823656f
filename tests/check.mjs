/** `npm run check`: everything that can be held against the sources without running them. */
import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const types = (folder) => {
  const record = `.cache/types/${folder}.tsbuildinfo`
  return `tsc -p ${folder} --incremental --tsBuildInfoFile ${record}`
}
const steps = {
  lint: 'eslint .',
  screens: 'svelte-check --workspace web --tsconfig ./tsconfig.json --fail-on-warnings',
  'types of the packages': types('packages'),
  'types of the server': types('server'),
  'types of the tests': types('.'),
  'unused code': 'knip',
  format: 'prettier --check --log-level=warn --cache --cache-location=.cache/prettier .',
}

const waiting = Object.entries(steps)
const failed = []
await Promise.all([worker(), worker()])
console.log(failed.length === 0 ? '\nAll is well.' : `\nFailed: ${failed.join(', ')}`)
process.exitCode = failed.length === 0 ? 0 : 1

async function worker() {
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) await run(...next)
}

/** What a step prints is kept together, since two run at once. */
function run(name, command) {
  const started = performance.now()
  const child = spawn(`npm exec --no -- ${command}`, { cwd: root, shell: true })
  let output = ''
  child.stdout.on('data', (part) => (output += part))
  child.stderr.on('data', (part) => (output += part))
  return new Promise((resolve) => {
    child.on('close', (code) => {
      const seconds = ((performance.now() - started) / 1_000).toFixed(1)
      if (code !== 0) failed.push(name)
      console.log(`${code === 0 ? 'ok    ' : 'FAILED'} ${name} (${seconds} s)`)
      if (code !== 0) console.log(output.trimEnd() + '\n')
      resolve()
    })
  })
}
