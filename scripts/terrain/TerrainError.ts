/** Every permanent code of a fault in an elevation file, with what it means. */
export const TERRAIN_CODES = {
  "terrain-format": "The elevation file is of a kind that is not read.",
  "terrain-truncated": "The elevation file ends before its heights do.",
  "terrain-unplaced": "The elevation file does not say where it lies.",
  "terrain-crs": "The elevation file is in a coordinate system that is not read.",
  "terrain-units": "The heights of the elevation file are not plain metres.",
  "terrain-not-square": "The cells of an ESRI ASCII grid are not square.",
  "terrain-rotated": "The elevation file is turned, north is not up.",
  "terrain-too-large": "The elevation file is larger than 6000 by 6000 cells or 6 degrees.",
  "terrain-too-small": "The elevation file has too few cells to compute with.",
  "terrain-hgt-name": "The name of an SRTM tile does not say where it lies.",
  "terrain-hgt-size": "An SRTM tile has neither 1201 nor 3601 rows.",
  "terrain-all-void": "The elevation file holds no height at all.",
  "terrain-height": "The elevation file holds a height that can not be.",
  "terrain-elsewhere": "The elevation file does not cover the centre of the area.",
} as const;

export type TerrainErrorCode = keyof typeof TERRAIN_CODES;

export interface TerrainFault {
  code: TerrainErrorCode;
  /** What the file holds, as written there. */
  found: string;
  /** What was expected, with units and range. */
  expected: string;
  /** What the owner of the file can do. */
  fix: string;
}

/** A fault of an elevation file that its owner can mend. It names no file: the caller knows which one it read. */
export class TerrainError extends Error {
  readonly code: TerrainErrorCode;
  readonly found: string;
  readonly expected: string;
  readonly fix: string;

  constructor(fault: TerrainFault, options?: ErrorOptions) {
    super(`[${fault.code}] found ${fault.found}; expected ${fault.expected}; ${fault.fix}`, options);
    this.name = "TerrainError";
    this.code = fault.code;
    this.found = fault.found;
    this.expected = fault.expected;
    this.fix = fault.fix;
  }
}
