/**
 * The Chromium that browser tests drive: the one named by CHROME_PATH, an installed one, Playwright's
 * own, or the one that comes as an npm package and needs nothing from the system (Linux, x64).
 */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { chromium, type Browser, type LaunchOptions } from 'playwright-core'
import { packagedChromium } from './packaged-chromium.ts'

/** Without these a browser in a closed network spends its time on addresses it cannot reach. */
const quietly = [
  ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'],
  ...['--disable-background-networking', '--disable-component-update'],
]

export async function launchChromium(options: LaunchOptions = {}): Promise<Browser> {
  return chromium.launch({
    ...findChromium(),
    ...options,
    args: [...quietly, ...(options.args ?? [])],
  })
}

type Found = Pick<LaunchOptions, 'executablePath' | 'env'>

function findChromium(): Found {
  const named = process.env['CHROME_PATH']
  if (named !== undefined && named !== '') return { executablePath: named }
  const there = [...wellKnown(), chromium.executablePath()].find((path) => existsSync(path))
  if (there !== undefined) return { executablePath: there }
  if (process.platform === 'linux' && process.arch === 'x64') return packagedChromium()
  return { executablePath: fetched() }
}

function wellKnown(): readonly string[] {
  switch (process.platform) {
    case 'darwin':
      return ['Google Chrome', 'Chromium', 'Microsoft Edge'].map(
        (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
      )
    case 'win32':
      return ['ProgramFiles', 'ProgramFiles(x86)', 'LocalAppData'].flatMap((place) => {
        const folder = process.env[place] ?? 'C:\\'
        return ['Google\\Chrome\\Application\\chrome.exe', 'Chromium\\Application\\chrome.exe'].map(
          (name) => join(folder, name),
        )
      })
    default:
      return ['google-chrome', 'google-chrome-stable', 'chromium', 'chromium-browser'].map(
        (name) => `/usr/bin/${name}`,
      )
  }
}

/** A laptop that has no Chrome and cannot run the packaged one gets Playwright's. */
function fetched(): string {
  spawnSync('npx playwright-core install chromium', { shell: true, stdio: 'inherit' })
  if (existsSync(chromium.executablePath())) return chromium.executablePath()
  throw new Error(
    'No browser for the tests: install Chrome or Chromium, or name one with CHROME_PATH.',
  )
}
