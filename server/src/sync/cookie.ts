/** The value of one cookie in a Cookie header (RFC 6265, section 4.2.1). */
export function cookieIn(header: string | undefined, name: string): string | undefined {
  for (const pair of (header ?? '').split(';')) {
    const [key, value] = pair.trim().split('=', 2)
    if (key === name) return value
  }
  return undefined
}
