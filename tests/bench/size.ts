/**
 * What a screen loads, compressed as the server does it, read off the build: what the page names, the screen's own
 * part, and all that these import statically. The line to the server and the machine at work are asked for at the same
 * time and come after the first picture; a second figure has them too.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { rounded, type Row } from './row.ts'

const BUILD = join(import.meta.dirname, '../../build/web')
/** Thousands of bytes of script. */
const GOALS_KB = { wall: 110, driver: 60 } as const
/** The driver's script, style and fonts together. */
const ALL_GOAL_KB = 120
export function bench(): readonly Row[] {
  const page = found(read('index.html'), /\/(assets\/[^"]+\.(?:js|css))"/g)
  const entry = read(page.find((file) => file.startsWith('assets/index-') && is(file, 'js')) ?? '')
  const line = partOf(entry, { name: 'engine-' })
  const screens = Object.entries(GOALS_KB).map(([screen, goalKb]) => {
    const first = [...page, ...partOf(entry, { before: `${screen}/Screen.svelte[^,]*` })]
    return { screen, goalKb, first, all: [...first, ...line] }
  })
  const driver = screens.flatMap(({ screen, all }) => (screen === 'driver' ? all : []))
  return [
    ...screens.flatMap(({ screen, goalKb, first, all }) => [
      row(`${screen}: script before the first picture`, kilobytes(first, 'js'), goalKb),
      row(`${screen}: script with the line to the server`, kilobytes(all, 'js'), goalKb),
    ]),
    row('driver: script, style and fonts', kilobytes([...driver, ...fonts(page)]), ALL_GOAL_KB),
  ]
}

/** A part that is fetched by itself: its file, and all it needs, which the build names by number. */
function partOf(
  entry: string,
  { before = '', name = '' }: { readonly before?: string; readonly name?: string },
): readonly string[] {
  const fetched = `import\\(["\`]\\./(${name}[^"\`]+)["\`]\\),__vite__mapDeps\\(\\[([\\d,]+)\\]`
  const [, file, numbers] = new RegExp(before + fetched).exec(entry) ?? []
  if (file === undefined || numbers === undefined) throw new Error('The build looks different now.')
  const [, names = ''] = /m\.f=\[([^\]]*)\]/.exec(entry) ?? []
  const named = found(names, /"([^"]+)"/g)
  return [`assets/${file}`, ...numbers.split(',').map((number) => named[Number(number)] ?? '')]
}

/** As the style names them; they are compressed already. */
function fonts(page: readonly string[]): readonly string[] {
  const style = page.filter((file) => is(file, 'css')).map(read)
  return style.flatMap((css) => found(css, /(assets\/[^)"']+\.woff2)/g))
}

function kilobytes(files: readonly string[], ending = ''): number {
  const sizes = [...new Set(files)]
    .filter((file) => is(file, ending))
    .map((file) => {
      const bytes = readFileSync(join(BUILD, file))
      return is(file, 'woff2') ? bytes.length : gzipSync(bytes).length
    })
  return sizes.reduce((sum, size) => sum + size, 0) / 1_000
}

function found(text: string, what: RegExp): readonly string[] {
  return [...text.matchAll(what)].map(([, name = '']) => name)
}

function read(file: string): string {
  return readFileSync(join(BUILD, file), 'utf8')
}

function is(file: string, ending: string): boolean {
  return file.endsWith(ending)
}

function row(figure: string, value: number, goalKb: number): Row {
  const met = value <= goalKb
  const shown = { figure, value: rounded(value), unit: 'KB' }
  return { ...shown, baseline: null, ratio: null, goal: `at most ${goalKb}`, met }
}
