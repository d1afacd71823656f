/** The lane change comes after the first picture; apart from who shows it, so that preloading brings nothing with it. */
export const fetchLaneChange = () => import('./parts.ts')
