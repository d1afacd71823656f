import { test } from 'vitest'
test('perf', async () => { await import('./zz-perf.ts') })
