// Loaded before the server: a machine whose clock is wrong by CLOCK_SHIFT_MS from the start.
const shiftMs = Number(process.env.CLOCK_SHIFT_MS)
const RealDate = Date

globalThis.Date = class extends RealDate {
  constructor(...parts) {
    if (parts.length === 0) super(RealDate.now() + shiftMs)
    else super(...parts)
  }

  static now() {
    return RealDate.now() + shiftMs
  }
}
