/** A time zone in which it is this hour of the day now, so that no screen depends on when it is tested. */
export function zoneWhere(hour: number): string {
  const ahead = (hour - new Date().getUTCHours() + 24) % 24
  const east = ahead > 12 ? ahead - 24 : ahead
  // POSIX turned the sign round: Etc/GMT-5 lies five hours east of Greenwich.
  return east === 0 ? 'Etc/GMT' : `Etc/GMT${east > 0 ? '-' : '+'}${Math.abs(east)}`
}
