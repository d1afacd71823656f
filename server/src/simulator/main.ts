/** `npm run simulate -- --code CODE [--url http://localhost:8080] [--of lanes] [--speed N] [--seed N]` */
import { parseArgs } from 'node:util'
import { joinAsScreen } from './screen.ts'
import { openRace } from './open-race.ts'
import { readScript } from './script.ts'
import { stirred } from './stir.ts'
import { DEMOS } from './demo.ts'

const { values } = parseArgs({
  options: {
    url: { type: 'string', default: 'http://localhost:8080' },
    code: { type: 'string' },
    of: { type: 'string', default: 'digital' },
    speed: { type: 'string', default: '10' },
    seed: { type: 'string', default: '0' },
  },
})

if (values.code === undefined) {
  console.error(
    'A fictional race joins like any captain’s screen: give it a code with --code, from the Team screen or `npm run invite -- captain`.',
  )
  process.exit(2)
}

const demo = values.of === 'lanes' ? DEMOS.lanes : DEMOS.digital
const screen = await joinAsScreen(values.url, { code: values.code, name: 'Simulated wall' })
const script = stirred(readScript(demo.folder), Number(values.seed))
const race = await openRace(screen, script, {
  name: demo.name,
  rate: Number(values.speed),
  openAtMs: demo.openAtMs,
})
console.log(
  `Running at ${values.url}/meetings/${race.meeting}/wall, seed ${values.seed}, ${values.speed} times as fast. Ctrl-C ends it.`,
)
await race.over
