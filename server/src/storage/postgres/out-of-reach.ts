/** What PostgreSQL and the way to it say: is the database out of reach, or was the command at fault? */
import pg from 'pg'

/** Connection, resources, shutdown, the system below it, a database that takes no writes. */
const STATES = /^(08|53|57P|58|25006|25P03)/
const MET_ANOTHER = /^(40P01|40001|23505)$/

export function isOutOfReach(error: unknown): boolean {
  const { code = '', message = '' } = error as { readonly code?: string; readonly message?: string }
  if (error instanceof pg.DatabaseError) return STATES.test(code)
  return (
    /^E[A-Z]{3,}$/.test(code) ||
    /^(Connection terminated|timeout e|Query read timeout|Client (was closed|has encountered))/i.test(
      message,
    )
  )
}

/** Another process was there first: done once more, it sees what that one did. */
export function hasMetAnother(error: unknown): boolean {
  return error instanceof pg.DatabaseError && MET_ANOTHER.test(error.code ?? '')
}

export function words(error: unknown): string {
  if (error instanceof AggregateError) return error.errors.map(words).join(', ')
  return error instanceof Error ? error.message : String(error)
}
