import type { Transaction } from 'kysely'
import type { Tables } from '../tables.ts'

/** The open transaction a command works in. It never outlives the command. */
export type Trx = Transaction<Tables>

/** The answer of a command that has nothing to tell. */
export type Done = 'done'
