/** Puts a text where the browser puts what is downloaded. Needs no server, and no secure page. */
export function saveFile(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  // Some browsers begin to read it only after this turn.
  setTimeout(() => URL.revokeObjectURL(address), RELEASED_AFTER_REAL_MS)
}

const RELEASED_AFTER_REAL_MS = 60_000
