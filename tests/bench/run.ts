/**
 * `npm run bench [-- NAME…]`: measures what `tests/bench/NAME.ts` measures, all of them without a name.
 * Prints a table; with `--json` the rows as one JSON array and nothing else on standard output.
 */
import { readdirSync } from 'node:fs'
import { cpus } from 'node:os'
import type { BenchModule, Row } from './row.ts'

/** These two are of the bench, not in it. */
const NOT_MODULES = ['run.ts', 'row.ts']
const names = readdirSync(import.meta.dirname)
  .filter(
    (file) => file.endsWith('.ts') && !file.endsWith('.test.ts') && !NOT_MODULES.includes(file),
  )
  .map((file) => file.slice(0, -'.ts'.length))

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'))
const unknown = asked.filter((name) => !names.includes(name))
if (unknown.length > 0) {
  console.error(`There is no bench ${unknown.join(', ')}. There are: ${names.join(', ')}.`)
  process.exit(2)
}

const rows: Row[] = []
for (const name of asked.length > 0 ? asked : names) {
  console.error(`Measuring ${name} …`)
  const { bench } = (await import(`./${name}.ts`)) as BenchModule
  rows.push(...(await bench()))
}

if (process.argv.includes('--json')) {
  console.log(JSON.stringify(rows))
} else {
  const machine = cpus()
  console.log(
    `Node ${process.version}, ${machine.length} × ${machine[0]?.model ?? 'unknown processor'}`,
  )
  console.table(rows)
}
