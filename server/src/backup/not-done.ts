/** A command of the operator's could not be carried out: its message is a sentence for them. */
export class NotDone extends Error {}

/** A database has tools of its own for this, which see to everything that is in it. */
export function refuseDatabase(
  { database }: { readonly database?: string },
  withWhat: string,
): void {
  if (database === undefined) return
  throw new NotDone(
    `What is recorded is in PostgreSQL (--database), which copies itself: use ${withWhat}. Nothing was done.`,
  )
}

/** What the disk says, in words; undefined where it is no fault of the disk. */
export function diskSentence(error: unknown, where: string): string | undefined {
  const { code = '' } = error as { readonly code?: string }
  if (/^(ENOSPC|EDQUOT|EFBIG|SQLITE_FULL)$/.test(code)) {
    return `There is no room for it: ${where} takes no more.`
  }
  if (/^(EACCES|EPERM|EROFS|ENOENT|SQLITE_CANTOPEN.*|SQLITE_READONLY.*)$/.test(code)) {
    return `Pitlamp may not write there: ${where} is closed to it.`
  }
  if (/^(EIO|SQLITE_IOERR.*)$/.test(code)) return `The disk fails (${code}): ${where}.`
  return undefined
}
