/** Permanent codes of faults in an elevation file. */
export type TerrainErrorCode =
  | "terrain-format"
  | "terrain-truncated"
  | "terrain-unplaced"
  | "terrain-crs"
  | "terrain-units"
  | "terrain-not-square"
  | "terrain-rotated"
  | "terrain-too-large"
  | "terrain-too-small"
  | "terrain-hgt-name"
  | "terrain-hgt-size"
  | "terrain-all-void"
  | "terrain-height"
  | "terrain-elsewhere";

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
