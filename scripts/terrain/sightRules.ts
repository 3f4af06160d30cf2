/** How a line of sight bends against the ground. */
export interface SightRules {
  /** Share of the Earth's curvature that refraction takes back (k). */
  refraction: number;
  earthRadiusM: number;
}

/** What one cell of a viewshed is. */
export const SIGHT = {
  /** Known ground lies in the way. */
  hidden: 0,
  /** The whole line of sight runs over known ground and clears it. */
  visible: 1,
  /** A void lies under the line of sight or at its end: never taken as visible. */
  unknown: 2,
  /** Farther than the reach. */
  beyond: 3,
} as const;

/** How far the ground falls below a level line at a distance: this times the distance squared. */
export function dropPerM2(rules: SightRules): number {
  return (1 - rules.refraction) / (2 * rules.earthRadiusM);
}
