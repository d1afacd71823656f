import { expect, it } from 'vitest'
import { pathTo, routeOf } from './routes.ts'

const meeting = '018f3a50-6a00-7000-8000-000000000001'

it('finds the screen and the meeting in an address, and back', () => {
  expect(routeOf('/')).toEqual({ screen: 'meetings' })
  expect(routeOf('/join')).toEqual({ screen: 'join' })
  expect(routeOf(`/meetings/${meeting}/driver`)).toEqual({ screen: 'driver', meeting })
  expect(routeOf(`/meetings/${meeting}/between`)).toEqual({ screen: 'between', meeting })
  expect(routeOf(pathTo(meeting, 'log'))).toEqual({ screen: 'log', meeting })
})

it('does not know addresses that are no screen', () => {
  const paths = [
    `/meetings/${meeting}`,
    `/meetings/${meeting}/join`,
    '/meetings/x/wall',
    '/nowhere',
  ]
  for (const path of paths) expect(routeOf(path)).toEqual({ screen: 'unknown' })
})
