import { correction, generate } from 'lean-qr'

const QUIET_ZONE = 2

/** Two modules a character, dark on light whatever the terminal's colours are. */
export function qrForTerminal(text: string): string {
  const code = generate(text, { minCorrectionLevel: correction.L })
  const rows: string[] = []
  for (let y = -QUIET_ZONE; y < code.size + QUIET_ZONE; y += 2) {
    let row = ''
    for (let x = -QUIET_ZONE; x < code.size + QUIET_ZONE; x += 1) {
      row += HALVES[(code.get(x, y) ? 2 : 0) + (code.get(x, y + 1) ? 1 : 0)] ?? ' '
    }
    rows.push(`  \u001B[30;47m${row}\u001B[0m\n`)
  }
  return `${rows.join('')}\n`
}

/** Neither half dark, the lower, the upper, both. */
const HALVES = [' ', '▄', '▀', '█']
