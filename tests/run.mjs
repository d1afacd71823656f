/** `npm test`: every test, the slowest files, what was skipped and why; the last line is the count. */
import { parseCLI, startVitest } from 'vitest/node'

const { filter, options } = parseCLI(['vitest', 'run', ...process.argv.slice(2)])
const vitest = await startVitest('test', filter, { ...options, watch: false })
const modules = vitest.state.getTestModules()
const tests = modules.flatMap((module) => [...module.children.allTests()])
const outcomes = tests.map((test) => ({ test, ...test.result() }))
const skipped = outcomes.filter(({ state }) => state === 'skipped')
const broken = modules.filter((module) => module.errors().length > 0)
const unhandled = vitest.state.getUnhandledErrors()
await vitest.close()

const secondsOf = (module) => {
  const { prepareDuration, collectDuration, setupDuration, duration } = module.diagnostic()
  return (prepareDuration + collectDuration + setupDuration + duration) / 1_000
}
console.log('\nThe slowest files:')
for (const module of [...modules].sort((a, b) => secondsOf(b) - secondsOf(a)).slice(0, 10)) {
  console.log(`  ${secondsOf(module).toFixed(1).padStart(6)} s  ${module.relativeModuleId}`)
}
const seeds = vitest.projects.map(({ name }) => name).filter((name) => name.startsWith('seed '))
console.log(`Random tests ran under ${seeds.join(', ')} (the last is this commit's).`)
for (const { test, note } of skipped) {
  console.log(`Skipped: ${test.fullName} (${test.module.relativeModuleId}): ${note ?? 'no reason'}`)
}

const passed = outcomes.filter(({ state }) => state === 'passed').length
const explained = skipped.filter(({ note }) => note).length
const failed = tests.length - passed - explained + broken.length + unhandled.length
process.exitCode = failed > 0 || passed === 0 ? 1 : 0
console.log(`${passed} passed, ${failed} failed`)
