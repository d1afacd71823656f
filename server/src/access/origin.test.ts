import { expect, test } from 'vitest'
import { isOurs } from './origin.ts'

const names = { machine: 'PitBox.lan', publicUrl: 'https://pit.example.org' }
const ours = (host: string | undefined, origin?: string) => isOurs({ host, origin }, names)

test('it answers to addresses, localhost, the machine’s name and the public one, and to nothing else', () => {
  const answered = ['192.168.1.5:8080', '127.0.0.1', '[::1]:8080', 'localhost:1', 'pitbox.lan:8080']
  expect(
    [...answered, 'pitbox:8080', 'pitbox.lan.local', 'pit.example.org'].filter(
      (host) => !ours(host),
    ),
  ).toEqual([])
  const refused = ['elsewhere.example', 'localhost.elsewhere.example', '1.2.3.4.example', '', 'a b']
  expect([...refused, undefined].filter((host) => ours(host))).toEqual([])
})

test('a page may only speak to the address it came from', () => {
  expect(ours('192.168.1.5:8080', 'http://192.168.1.5:8080')).toBe(true)
  expect(ours('192.168.1.5', 'http://192.168.1.5')).toBe(true)
  expect(ours('192.168.1.5', 'https://192.168.1.5')).toBe(true)
  expect(ours('192.168.1.5:8080', 'http://192.168.1.5:9090')).toBe(false)
  expect(ours('192.168.1.5:8080', 'http://192.168.1.6:8080')).toBe(false)
  expect(ours('192.168.1.5:8080', 'http://elsewhere.example')).toBe(false)
  expect(ours('192.168.1.5:8080', 'null')).toBe(false)
})

test('behind a proxy a page comes from the public address', () => {
  expect(ours('127.0.0.1:8080', 'https://pit.example.org')).toBe(true)
  expect(ours('127.0.0.1:8080', 'http://pit.example.org')).toBe(false)
})
