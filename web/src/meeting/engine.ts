/** What a meeting needs beyond its first picture, fetched after it: the line, the machine at work, the alerts. */
export { Alerts } from './alerts.svelte.ts'
export { Connection } from './connection.ts'
export { copied } from './copied.ts'
export { deviceReport } from './device-report.ts'
export { handOver } from './hand-over.ts'
export { Replica } from './replica.ts'
