/** Chromium out of an npm package, with the libraries and fonts that a bare Linux lacks. */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import manifest from '../package.json' with { type: 'json' }

interface Packaged {
  readonly executablePath: string
  readonly env: Record<string, string>
}

const version = manifest.devDependencies['@sparticuz/chromium']
const home = join(import.meta.dirname, `../../.cache/chromium-${version}`)

export function packagedChromium(): Packaged {
  if (!existsSync(home)) unpack()
  return {
    executablePath: join(home, 'chromium'),
    env: {
      ...(process.env as Record<string, string>),
      LD_LIBRARY_PATH: join(home, 'al2023/lib'),
      FONTCONFIG_PATH: join(home, 'fonts'),
    },
  }
}

/** Beside its place, then moved there whole: two test files may begin at the same moment. */
function unpack(): void {
  const stage = `${home}-${String(process.pid)}`
  mkdirSync(stage, { recursive: true })
  execFileSync(
    process.execPath,
    [
      '--input-type=module',
      '--eval',
      `import chromium from '@sparticuz/chromium'; await chromium.executablePath()`,
    ],
    {
      cwd: import.meta.dirname,
      // It unpacks into the folder for temporary files, and its libraries only when it takes the
      // system for the one it was made for.
      env: { ...process.env, TMPDIR: stage, AWS_LAMBDA_JS_RUNTIME: 'nodejs20.x' },
    },
  )
  const fonts = join(stage, 'fonts/fonts.conf')
  const settings = readFileSync(fonts, 'utf8')
  writeFileSync(fonts, settings.replaceAll('/tmp/fonts', join(home, 'fonts')))
  try {
    renameSync(stage, home)
  } catch (error) {
    rmSync(stage, { recursive: true, force: true })
    if (!existsSync(home)) throw error
  }
}
