/** `npx tsx tests/reference/second-solver/write-models.ts FOLDER`: each stored model as FOLDER/NAME.mps. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { build } from '../../../packages/planner/src/rotation/build.ts'
import { mpsOf } from './mps.ts'
import { MODELS, stored } from './stored.ts'

const [folder] = process.argv.slice(2)
if (folder === undefined) {
  console.error('Into which folder?')
  process.exit(2)
}
mkdirSync(folder, { recursive: true })
for (const model of MODELS) {
  writeFileSync(join(folder, `${model}.mps`), mpsOf(build(stored(model).problem).model, model))
}
