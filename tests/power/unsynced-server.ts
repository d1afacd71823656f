/** The server as a team runs it, but for one thing: SQLite does not sync what it acknowledges. */
import { run } from '../../server/src/run.ts'

await run(process.argv.slice(2), { synchronous: 'NORMAL' })
