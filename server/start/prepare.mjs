/** Runs before `npm start` and `npm test`, with nothing but Node to rely on. */
import { ensureBuilt } from './build.mjs'
import { ensureInstalled } from './install.mjs'

const [major, minor] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) {
  throw new Error(`Pitlamp needs Node 20.19 or later; this is ${process.versions.node}.`)
}
await ensureBuilt(await ensureInstalled())
