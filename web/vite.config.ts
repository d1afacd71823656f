import { join } from 'node:path'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vite'
import { CHUNKS } from './chunks.config.ts'
import { precache } from './precache.config.ts'
import { websocketOnly } from './websocket-only.config.ts'

const SERVER = process.env.PITLAMP_DEV_SERVER ?? 'http://localhost:8080'

export default defineConfig({
  root: import.meta.dirname,
  plugins: [svelte(), websocketOnly(), precache()],
  build: {
    outDir: join(import.meta.dirname, '../build/web'),
    emptyOutDir: true,
    target: 'es2022',
    // The security policy takes neither data: addresses nor inline scripts.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: {
        index: join(import.meta.dirname, 'index.html'),
        'service-worker': join(import.meta.dirname, 'src/service-worker.ts'),
      },
      output: {
        codeSplitting: { groups: CHUNKS },
        // The worker's address stays the same from build to build; everything else is named by content.
        entryFileNames: ({ name }) =>
          name === 'service-worker' ? '[name].js' : 'assets/[name]-[hash].js',
      },
    },
  },
  server: {
    // The Host header is left as it is, so that it agrees with Origin, as the server demands.
    proxy: {
      '/api': { target: SERVER },
      '/socket.io': { target: SERVER, ws: true },
    },
  },
})
