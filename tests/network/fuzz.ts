/**
 * `npm run fuzz [-- --schedules N --seed S --short --json]`: the schedules of `npm test`, many more of them. A
 * schedule that fails is shrunk and printed, ready to become a test in found.test.ts.
 */
import { parseArgs } from 'node:util'
import { run } from './run.ts'

const SHORT = 2_000
const LONG = 100_000

const { values } = parseArgs({
  options: {
    schedules: { type: 'string' },
    seed: { type: 'string' },
    short: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
  },
})
const schedules = Number(values.schedules ?? (values.short ? SHORT : LONG))
const seed = Number(values.seed ?? Date.now() % 2_147_483_647)

console.error(`${String(schedules)} schedules, seed ${String(seed)} …`)
const { played, failure } = await run({ schedules, seed, shrink: true })
if (failure) {
  console.error(failure.law)
  console.error(failure.report)
  process.exitCode = 1
}
const row = {
  figure: `schedules after which all screens agree with the server (seed ${String(seed)})`,
  value: failure ? played - 1 : played,
  unit: 'schedules',
  baseline: null,
  ratio: null,
  goal: `all of ${String(schedules)}`,
  met: !failure,
}
if (values.json) console.log(JSON.stringify([row]))
else console.table([row])
