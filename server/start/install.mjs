/** Installs what the lock file names, beside what is there, and swaps it in when it is whole. */
import { spawn, spawnSync } from 'node:child_process'
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import {
  contentsOf,
  filesBelow,
  fingerprint,
  freshStage,
  recover,
  root,
  swapIn,
} from './folders.mjs'

const lock = 'package-lock.json'
const installed = join(root, 'node_modules')
const stampFile = join(installed, '.pitlamp-installed')

/** True when what is installed is what the lock file names; false when it is older but works. */
export async function ensureInstalled() {
  recover(installed)
  const stamp = fingerprint([lock], process.versions.modules, process.platform, process.arch)
  if (contentsOf(stampFile) === stamp) return true
  const works = storeOpens()
  if (!works || !matchesLock()) {
    console.error('Installing packages; the first time takes a minute or two …')
    const complaint = await installBeside(works)
    if (complaint !== undefined) return carryOn(complaint, works)
  }
  writeFileSync(stampFile, stamp)
  return true
}

function carryOn(complaint, works) {
  console.error(complaint)
  if (!works) {
    console.error('\nThe packages could not be installed: the lines above say why.')
    process.exit(1)
  }
  console.error('\nCould not install the newer packages. Going on with those that are here.')
  return false
}

/** In a process of its own: a binary for another Node does not always fail politely. */
function storeOpens() {
  const script = `new (require('better-sqlite3'))(':memory:')`
  return spawnSync(process.execPath, ['-e', script], { cwd: join(root, 'server') }).status === 0
}

/** Somebody may have run npm by hand: npm's own record of what it installed tells. */
function matchesLock() {
  const record = contentsOf(join(installed, '.package-lock.json'))
  if (record === undefined) return false
  const here = JSON.parse(record).packages
  const wanted = JSON.parse(readFileSync(join(root, lock), 'utf8')).packages
  return Object.entries(wanted)
    .filter(([path]) => path.includes('node_modules/'))
    .every(
      ([path, { version, optional }]) =>
        here[path]?.version === version || (optional && !here[path]),
    )
}

/** What npm said when it failed, or nothing. */
async function installBeside(haste) {
  const stage = freshStage('install')
  const manifests = filesBelow(['packages', 'server', 'web', 'tests']).filter((file) =>
    file.endsWith('/package.json'),
  )
  for (const file of ['package.json', lock, '.npmrc', ...manifests]) {
    if (!existsSync(join(root, file))) continue
    mkdirSync(dirname(join(stage, file)), { recursive: true })
    copyFileSync(join(root, file), join(stage, file))
  }
  const { code, output } = await npmCi(stage, haste)
  if (code !== 0) {
    rmSync(stage, { recursive: true, force: true })
    return explain(output)
  }
  const folders = ['.', ...manifests.map(dirname)].map((folder) => join(folder, 'node_modules'))
  for (const folder of folders) swapIn(join(stage, folder), join(root, folder))
  rmSync(stage, { recursive: true, force: true })
}

/** In haste (something works already) an unreachable registry is not asked again and again. */
function npmCi(cwd, haste) {
  const options = ['ci', '--include=dev', '--no-audit', '--no-fund', '--prefer-offline']
  if (haste) options.push('--fetch-retries=0')
  const npm = process.env.npm_execpath
  const child = npm?.endsWith('npm-cli.js')
    ? spawn(process.execPath, [npm, ...options], { cwd })
    : spawn(`npm ${options.join(' ')}`, { cwd, shell: true })
  let output = ''
  child.stdout.on('data', (part) => (output += part))
  child.stderr.on('data', (part) => (output += part))
  return new Promise((resolve) => child.on('close', (code) => resolve({ code, output })))
}

function explain(output) {
  const end = output.trimEnd().split('\n').slice(-25).join('\n')
  if (!/gyp ERR/.test(output)) return end
  return `${end}\n\nThe store (better-sqlite3) had to be compiled and that failed. It needs a C++
toolchain: python3, make and g++ (Debian: apt install python3 make g++; macOS: xcode-select
--install; Windows: the "Desktop development with C++" workload of the Visual Studio build tools).`
}
