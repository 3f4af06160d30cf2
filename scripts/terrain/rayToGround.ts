import { normalizeDeg } from "../geo/bearings.ts";
import type { Position } from "../geo/position.ts";
import { fromUtm } from "../geo/utm.ts";
import { type ElevationGrid, interpolate, placeOnGrid } from "./elevationGrid.ts";
import { firstMeeting, type GroundLine } from "./firstMeeting.ts";

export interface GroundRay {
  from: Position;
  /** Over the ground at `from`, 0 or more. */
  heightM: number;
  /** True bearing. */
  bearingDeg: number;
  /** How steeply the line falls, negative when it rises; or a height over the ground at a distance that it passes through. */
  aim: { kind: "down"; downDeg: number } | { kind: "through"; distanceM: number; heightM: number };
  /** Ground nearer than this is not looked at, such as that before the target. */
  startsAtM: number;
  reachM: number;
  /** The ground that is met is taken this much higher (negative: lower) than the grid has it. The ends of the line are not. */
  groundOffsetM: number;
}

/** Where a straight line meets the ground. */
export interface GroundMeeting {
  /** Horizontal distance from where the line starts. */
  distanceM: number;
  position: Position;
  /** Of the line there; the ground's own but for the offset. */
  elevationM: number;
  /** Slope of the ground along the bearing just beyond, degrees: positive where it rises away. */
  groundRiseDeg: number;
  /** How steeply the line falls. */
  downDeg: number;
  /** Between line and ground along the bearing, 0 (grazing) to 180. */
  meetsAtDeg: number;
}

export type GroundMeetingResult = { meeting: GroundMeeting; why: null } | { meeting: null; why: string };

/**
 * Where a straight line first meets the bilinear ground: exact, from grid line to grid line. Does not know of trees, of the
 * curvature of the Earth (8 cm at 1 km), of the drop of a bullet, nor of how far off the grid is: ask again with a lower ground.
 *
 * @returns the meeting, or null with the reason: no ground met within the reach, or the line runs over a void or off the grid first
 * @throws {RangeError} when a distance or height is under 0 or the angle is not within 90 degrees
 */
export function rayToGround(grid: ElevationGrid, ray: GroundRay): GroundMeetingResult {
  const { heightM, bearingDeg, startsAtM, reachM, groundOffsetM } = ray;
  if (!(heightM >= 0)) throw new RangeError(`heightM must be 0 or more, found ${heightM}`);
  if (!(startsAtM >= 0)) throw new RangeError(`startsAtM must be 0 or more, found ${startsAtM}`);
  if (!(reachM > startsAtM)) throw new RangeError(`reachM must be over ${startsAtM}, found ${reachM}`);
  if (!Number.isFinite(groundOffsetM))
    throw new RangeError(`groundOffsetM must be finite, found ${groundOffsetM}`);
  const place = placeOnGrid(grid, ray.from);
  const gridBearingRad = ((normalizeDeg(bearingDeg) - place.convergenceDeg) * Math.PI) / 180;
  const eastPerM = Math.sin(gridBearingRad) / grid.cellSizeM;
  const southPerM = -Math.cos(gridBearingRad) / grid.cellSizeM;
  const groundM = interpolate(grid, place.row, place.column);
  if (Number.isNaN(groundM)) {
    return { meeting: null, why: "the start lies outside the elevation grid or on a void" };
  }
  const line: GroundLine = {
    row: place.row,
    column: place.column,
    southPerM,
    eastPerM,
    startM: groundM + heightM - groundOffsetM,
    fallPerM: 0,
  };
  if (ray.aim.kind === "down") {
    const { downDeg } = ray.aim;
    if (!(Math.abs(downDeg) < 90)) throw new RangeError(`downDeg must be within 90, found ${downDeg}`);
    line.fallPerM = Math.tan((downDeg * Math.PI) / 180);
  } else {
    const { distanceM, heightM: aimHeightM } = ray.aim;
    if (!(distanceM > 0)) throw new RangeError(`aim.distanceM must be over 0, found ${distanceM}`);
    if (!(aimHeightM >= 0)) throw new RangeError(`aim.heightM must be 0 or more, found ${aimHeightM}`);
    const aimGroundM = interpolate(
      grid,
      place.row + southPerM * distanceM,
      place.column + eastPerM * distanceM,
    );
    if (Number.isNaN(aimGroundM)) {
      return { meeting: null, why: "the aim lies outside the elevation grid or on a void" };
    }
    line.fallPerM = (groundM + heightM - aimGroundM - aimHeightM) / distanceM;
  }
  const found = firstMeeting(grid, line, startsAtM, reachM);
  if (found.kind === "unknown") {
    return { meeting: null, why: `the ground is not known from ${Math.round(found.distanceM)} m on` };
  }
  if (found.kind === "none") return { meeting: null, why: `no ground met within ${Math.round(reachM)} m` };
  const { distanceM, risePerM } = found;
  const downDeg = (Math.atan(line.fallPerM) * 180) / Math.PI;
  const groundRiseDeg = (Math.atan(risePerM) * 180) / Math.PI;
  return {
    meeting: {
      distanceM,
      position: fromUtm(
        {
          eastingM: place.eastingM + Math.sin(gridBearingRad) * distanceM,
          northingM: place.northingM + Math.cos(gridBearingRad) * distanceM,
        },
        grid.zone,
      ),
      elevationM: groundM + heightM - line.fallPerM * distanceM,
      groundRiseDeg,
      downDeg,
      meetsAtDeg: Math.max(0, downDeg + groundRiseDeg),
    },
    why: null,
  };
}

/**
 * The same ray on the grid as it is and on ground that is lower beyond the aim by the error of the grid. What is safe only in the
 * first is not safe.
 */
export function rayToGroundWithMargin(
  grid: ElevationGrid,
  ray: Omit<GroundRay, "groundOffsetM">,
  gridErrorM: number,
): { asMapped: GroundMeetingResult; ifLower: GroundMeetingResult } {
  if (!(gridErrorM >= 0)) throw new RangeError(`gridErrorM must be 0 or more, found ${gridErrorM}`);
  return {
    asMapped: rayToGround(grid, { ...ray, groundOffsetM: 0 }),
    ifLower: rayToGround(grid, { ...ray, groundOffsetM: -gridErrorM }),
  };
}
