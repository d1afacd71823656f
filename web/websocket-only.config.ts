/** The line to the server is a WebSocket and nothing else, so the library's other ways to carry it stay out of the build. */
import type { Plugin } from 'vite'

const TRANSPORTS = /engine\.io-client\/build\/esm\/transports\/index\.js$/

export function websocketOnly(): Plugin {
  let met = false
  return {
    name: 'pitlamp-websocket-only',
    apply: 'build',
    transform: (_code, id) => {
      if (!TRANSPORTS.test(id)) return undefined
      met = true
      return `import { WS } from './websocket.js'\nexport const transports = { websocket: WS }`
    },
    buildEnd: (error) => {
      if (!error && !met) throw new Error('engine.io-client keeps its transports elsewhere now.')
    },
  }
}
