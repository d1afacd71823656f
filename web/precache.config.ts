/** Tells the service worker what this build consists of: every file, and a version made of their names and content. */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin } from 'vite'

const WORKER = 'service-worker.js'

export function precache(): Plugin {
  let publicFolder = ''
  return {
    name: 'pitlamp-precache',
    apply: 'build',
    enforce: 'post',
    configResolved: (config) => {
      publicFolder = config.publicDir
    },
    generateBundle: {
      order: 'post',
      handler: (_options, bundle) => {
        const worker = bundle[WORKER]
        if (worker?.type !== 'chunk') throw new Error(`The build has no ${WORKER}.`)
        const hash = createHash('sha256').update(worker.code)
        const addresses: string[] = []
        for (const name of readdirSync(publicFolder)) {
          hash.update(name).update(readFileSync(join(publicFolder, name)))
          addresses.push(`/${name}`)
        }
        for (const [name, file] of Object.entries(bundle)) {
          if (name === WORKER) continue
          hash.update(name).update(file.type === 'chunk' ? file.code : file.source)
          // The page itself is kept under the address people open.
          addresses.push(name === 'index.html' ? '/' : `/${name}`)
        }
        const build = { version: hash.digest('hex').slice(0, 16), addresses: addresses.sort() }
        worker.code = worker.code.replace('__BUILD__', JSON.stringify(build))
      },
    },
  }
}
