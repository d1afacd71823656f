/**
 * npm passes a signal on to the shell that it started us through, and that shell dies of it without
 * a word to us: on its death we take it that we were meant. Loaded before the server by `npm start`.
 */
import { isMainThread } from 'node:worker_threads'

const parent = process.ppid
const signals = ['SIGINT', 'SIGTERM']

if (isMainThread && process.env.npm_lifecycle_event !== undefined) {
  const watch = setInterval(() => {
    if (process.ppid !== parent) process.kill(process.pid, 'SIGTERM')
  }, 200).unref()
  const told = (signal) => {
    clearInterval(watch)
    for (const name of signals) process.off(name, told)
    if (process.listenerCount(signal) === 0) process.kill(process.pid, signal)
  }
  for (const name of signals) process.on(name, told)
}
