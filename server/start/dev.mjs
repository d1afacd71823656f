/** `npm run dev`: the server and the screens, each reloaded when its sources change. */
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { ensureInstalled } from './install.mjs'
import { root } from './folders.mjs'

await ensureInstalled()
const bin = (name) => join(root, 'node_modules', name)
const children = [
  [bin('tsx/dist/cli.mjs'), 'watch', 'server/src/main.ts', ...process.argv.slice(2)],
  [bin('vite/bin/vite.js'), 'web'],
].map((command) => spawn(process.execPath, command, { cwd: root, stdio: 'inherit' }))

function stop() {
  for (const child of children) child.kill()
}
for (const child of children) child.on('exit', stop)
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, stop)
