/** What a document names that is not there: links, paths in backticks, npm scripts. */
export interface Repository {
  /** Every file, from the top: `server/src/main.ts`. */
  readonly files: readonly string[]
  readonly scripts: readonly string[]
}

export function namedButMissing(document: string, repository: Repository): readonly string[] {
  const links = [...document.matchAll(/\]\(([^)\s]+)\)/g)].map(([, target = '']) => target)
  const words = [...document.matchAll(/`([^`\n]+)`/g)].map(([, word = '']) => word)
  const paths = [...links.filter(isLocal).map(withoutAnchor), ...words.filter(looksLikePath)]
  const missing = paths.filter((path) => !exists(path, repository.files))
  return [...missing, ...missingScripts(document, repository.scripts)]
}

const isLocal = (target: string) => !/^([a-z]+:|#|\/)/.test(target)
const withoutAnchor = (target: string) => target.replace(/#.*$/, '').replace(/^\.\//, '')

const top = /^(packages|server|web|tests|seeds|\.ci)(\/|$)/
const fileName = /^[\w@][\w.@/-]*\.(ts|js|mjs|svelte|css|json|md|yml)$/
const folderName = /^[\w@][\w.@-]*(\/[\w.@-]+)*\/$/

/** From the top, or a file or folder by the end of its path (`fold/handlers/`); never a pattern. */
function looksLikePath(word: string): boolean {
  if (/[\s*<>{}…]/.test(word)) return false
  return top.test(word) || fileName.test(word) || folderName.test(word)
}

function exists(path: string, files: readonly string[]): boolean {
  const name = path.replace(/\/$/, '')
  const fromTop = (file: string) => file === name || file.startsWith(`${name}/`)
  if (top.test(path)) return files.some(fromTop)
  return files.some((file) => fromTop(file) || `/${file}/`.includes(`/${name}/`))
}

function missingScripts(document: string, scripts: readonly string[]): readonly string[] {
  return [...document.matchAll(/\bnpm (?:run ([\w:-]+)|(start|test)\b)/g)]
    .map(([, run, short]) => run ?? short ?? '')
    .filter((script) => !scripts.includes(script))
    .map((script) => `npm run ${script}`)
}
