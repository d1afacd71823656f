import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBench, type AppBench } from '../app-bench.ts'

interface Operation {
  readonly responses: Record<
    string,
    { readonly content?: Record<string, { readonly schema: object }> }
  >
  readonly parameters?: readonly { readonly in: string; readonly name: string }[]
  readonly requestBody?: { readonly content: Record<string, { readonly schema: object }> }
}

interface Description {
  readonly openapi: string
  readonly paths: Record<string, Record<string, Operation>>
}

let bench: AppBench
let described: Description
beforeAll(async () => {
  bench = await openBench()
  described = (await bench.ask('GET /api/openapi.json')).body as Description
})
afterAll(() => bench.close())

const operations = () =>
  Object.entries(described.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({
      name: `${method.toUpperCase()} ${path}`,
      path,
      operation,
    })),
  )

const isCalendar = (name: string) => /calendar(\.ics)?$/.test(name)
/** A line each, of one kind or another. */
const isLines = (name: string) => name.endsWith('/work')
/** Their address says everything. */
const TAKES_NOTHING = /plan-link$/

test('O1 is OpenAPI 3.1 and names every address of the interface', () => {
  expect(described.openapi).toBe('3.1.0')
  expect(
    operations()
      .map(({ name }) => name)
      .sort(),
  ).toEqual([
    'DELETE /api/meetings/{meeting}/plan-link',
    'GET /api/clock',
    'GET /api/devices',
    'GET /api/me',
    'GET /api/meetings',
    'GET /api/meetings/{meeting}',
    'GET /api/meetings/{meeting}/calendar.ics',
    'GET /api/meetings/{meeting}/documents/{document}',
    'GET /api/meetings/{meeting}/documents/{document}/versions',
    'GET /api/meetings/{meeting}/documents/{document}/versions/{version}',
    'GET /api/meetings/{meeting}/entries',
    'GET /api/people',
    'GET /api/tray',
    'PATCH /api/devices/{device}',
    'POST /api/clock/settle',
    'POST /api/copies',
    'POST /api/demo',
    'POST /api/invites',
    'POST /api/join',
    'POST /api/meetings',
    'POST /api/meetings/{meeting}/entries',
    'POST /api/meetings/{meeting}/plan-link',
    'POST /api/meetings/{meeting}/wall/give-back',
    'POST /api/meetings/{meeting}/wall/take',
    'POST /api/meetings/{meeting}/wall/take-back',
    'POST /api/meetings/{meeting}/work',
    'POST /api/people',
    'POST /api/plan',
    'POST /api/plan/calendar',
    'POST /api/tray/leave-aside',
    'POST /api/tray/take-in',
    'PUT /api/meetings/{meeting}/documents/{document}',
  ])
})

test('O2 every answer has a schema, and every failure is problem details', () => {
  for (const { name, operation } of operations()) {
    const { 200: fine, '4XX': refused } = operation.responses
    const schema = (type: string) => fine?.content?.[type]?.schema
    if (isCalendar(name)) expect(schema('text/calendar'), name).toHaveProperty('type', 'string')
    else if (isLines(name)) expect(schema('application/x-ndjson'), name).toHaveProperty('oneOf')
    else expect(schema('application/json'), name).toHaveProperty('type', 'object')
    expect(refused?.content?.['application/problem+json']?.schema, name).toHaveProperty(
      'required',
      [...['type', 'title', 'status', 'refusal']],
    )
  }
})

test('O3 every place in a path is a declared parameter, and everything written has a schema', () => {
  for (const { name, path, operation } of operations()) {
    const places = [...path.matchAll(/\{(\w+)\}/g)].map(([, place]) => place)
    const declared = (operation.parameters ?? []).filter((parameter) => parameter.in === 'path')
    expect(
      declared.map((parameter) => parameter.name),
      name,
    ).toEqual(places)
    if (name.startsWith('GET') || TAKES_NOTHING.test(path)) continue
    expect(operation.requestBody?.content['application/json']?.schema, name).toHaveProperty('type')
  }
})
