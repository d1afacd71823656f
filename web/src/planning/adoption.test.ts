import { expect, it } from 'vitest'
import { adoption } from './adoption.ts'

it('carries the content and the hash of its text', () => {
  const adopting = { document: 'car', version: 3, appliesFrom: 12_000, as: 'change' } as const
  const body = adoption({ ...adopting, text: '{"name":"Otter","faultTiles":[]}' })
  expect(body).toMatchObject({ ...adopting, content: { name: 'Otter', faultTiles: [] } })
  // printf '{"name":"Otter","faultTiles":[]}' | sha256sum
  expect(body.sha256).toBe('d2b328b86b181351684650fe9b9a48085351ff47b3bcb0f67d66d55eeb0d85e4')
})
