import type { PlanePoint } from "./seatPlane.ts";

/** Points along a line, none farther from the next than the step. */
export function pointsAlong(line: readonly PlanePoint[], stepM: number): PlanePoint[] {
  return line.flatMap((a, at) => {
    const b = line[at + 1];
    if (b === undefined) return [a];
    const east = b.eastM - a.eastM;
    const north = b.northM - a.northM;
    const parts = Math.max(1, Math.ceil(Math.hypot(east, north) / stepM));
    return Array.from({ length: parts }, (_, part) => ({
      eastM: a.eastM + (east * part) / parts,
      northM: a.northM + (north * part) / parts,
    }));
  });
}
