import { SIGHT } from "./sightRules.ts";
import { type Chain, chainOf, higherOfBoth } from "./skylineChain.ts";

/** Heights around an eye, in metres over the eye, already lowered by the Earth's curvature; NaN where not known. */
export interface SightWindow {
  rows: number;
  columns: number;
  /** Row-major. */
  overEyeM: Float64Array;
  /** Where the eye stands, fractional, 0 at the first centre. */
  eyeRow: number;
  eyeColumn: number;
  cellSizeM: number;
}

// A line of sight that touches the ground sees over it. Rise over run; 2 micrometres at 2 km.
const GRAZING = 1e-9;

// A cell on a diagonal or at the very reach must not fall between two quarters by rounding, and stay visible unlooked at.
const SLACK = 1e-9;

// Rise over run of ground that never hides anything, and of ground that always does.
const NEVER = -1e30;
const ALWAYS = 1e30;

/**
 * Marks the cells that can not be seen from the eye. A line of sight to the centre of a cell is held against the ground where
 * it crosses the row and column lines between cell centres; between two centres the ground is linear. Exact, and equal to
 * marching every line by itself, at a cost that grows with the number of cells only: seen from the eye every stretch of a
 * row or column line is straight in the plane of lateral ratio and rise over run, so that the skyline over all nearer lines is
 * a chain of straight pieces, kept while a front of cells moves outward.
 *
 * @param voids   `open`: an unknown stretch hides nothing, hidden cells become `hidden`; `closed`: it hides everything, and
 *   cells behind become `unknown`
 * @param marks   row-major like the window; only cells that are `visible` are looked at and changed
 */
export function sightSweep(
  window: SightWindow,
  targetHeightM: number,
  reachM: number,
  voids: "open" | "closed",
  marks: Uint8Array,
): void {
  const { rows, columns, eyeRow, eyeColumn } = window;
  const front = frontOf(Math.max(rows, columns));
  const task: SweepTask = {
    targetHeightM,
    reachCells: (reachM / window.cellSizeM) * (1 + SLACK),
    voidRise: voids === "open" ? NEVER : ALWAYS,
    mark: voids === "open" ? SIGHT.hidden : SIGHT.unknown,
    marks,
  };
  for (const step of [1, -1] as const) {
    const eastWest = { lines: columns, lineStride: 1, places: rows, placeStride: columns };
    const northSouth = { lines: rows, lineStride: columns, places: columns, placeStride: 1 };
    sweepQuarter(window, { ...eastWest, eyeLine: eyeColumn, eyePlace: eyeRow, step }, front, task);
    sweepQuarter(window, { ...northSouth, eyeLine: eyeRow, eyePlace: eyeColumn, step }, front, task);
  }
}

/** A quarter of the view, bounded by diagonals: lines of cells one behind the other, places along each line. */
interface Quarter {
  lines: number;
  lineStride: number;
  places: number;
  placeStride: number;
  eyeLine: number;
  eyePlace: number;
  /** 1 when lines are passed in the order of their numbers, -1 against it. */
  step: 1 | -1;
}

interface SweepTask {
  targetHeightM: number;
  reachCells: number;
  voidRise: number;
  mark: number;
  marks: Uint8Array;
}

/** Memory of a sweep, used again for each quarter. */
interface Front {
  /** Rise over run, from the eye to each place of the line before and of this line. */
  nearRise: Float64Array;
  rise: Float64Array;
  line: Chain;
  skyline: Chain;
  next: Chain;
}

function frontOf(side: number): Front {
  return {
    nearRise: new Float64Array(side),
    rise: new Float64Array(side),
    line: chainOf(2 * side + 4),
    skyline: chainOf(8 * side),
    next: chainOf(8 * side),
  };
}

function sweepQuarter(window: SightWindow, quarter: Quarter, front: Front, task: SweepTask): void {
  const { overEyeM, cellSizeM } = window;
  const { lines, lineStride, places, placeStride, eyeLine, eyePlace, step } = quarter;
  const { reachCells, voidRise } = task;
  let nearDistance = 0;
  front.skyline.from[0] = -2;
  front.skyline.rise[0] = NEVER;
  front.skyline.perT[0] = 0;
  front.skyline.pieces = 1;

  const firstLine = step === 1 ? Math.floor(eyeLine) + 1 : Math.ceil(eyeLine) - 1;
  for (let line = firstLine; line >= 0 && line < lines; line += step) {
    const distance = (line - eyeLine) * step;
    if (distance > reachCells) break;
    const half = Math.min(distance + SLACK, Math.sqrt(reachCells * reachCells - distance * distance));
    const isCutLow = eyePlace - half < 0;
    const isCutHigh = eyePlace + half > places - 1;
    const tLow = isCutLow ? -eyePlace / distance : Math.max(-half / distance, -1);
    const tHigh = isCutHigh ? (places - 1 - eyePlace) / distance : Math.min(half / distance, 1);
    const first = isCutLow ? 0 : Math.floor(eyePlace - half);
    const last = isCutHigh ? places - 1 : Math.ceil(eyePlace + half);
    const base = line * lineStride;
    const { rise, nearRise } = front;
    const perDistance = 1 / (distance * cellSizeM);
    for (let place = first; place <= last; place++) {
      rise[place] = overEyeM[base + place * placeStride]! * perDistance;
    }
    markBehind(front.skyline, rise, task, {
      extraRise: task.targetHeightM * perDistance + GRAZING,
      low: Math.max(first, Math.ceil(eyePlace - half)),
      high: Math.min(last, Math.floor(eyePlace + half)),
      eyePlace,
      distance,
      base,
      placeStride,
    });
    if (nearDistance === 0) {
      nearestRise(window, quarter, line, first, last, nearRise);
    }
    lineChain(front.line, rise, nearRise, {
      first,
      last,
      eyePlace,
      distance,
      nearDistance,
      tLow,
      tHigh,
      voidRise,
    });
    front.next = higherOfBoth(front.skyline, front.line, tLow, tHigh, front.next);
    [front.skyline, front.next] = [front.next, front.skyline];
    [front.nearRise, front.rise] = [rise, nearRise];
    nearDistance = distance;
  }
}

/**
 * For the nearest line, which has none before it in view: height over the eye, by the cell, where the cross lines pass abreast
 * of the eye.
 */
function nearestRise(
  window: SightWindow,
  quarter: Quarter,
  line: number,
  first: number,
  last: number,
  abreast: Float64Array,
): void {
  const { lineStride, placeStride, eyeLine, step } = quarter;
  const ahead = Math.abs(line - eyeLine);
  for (let place = first; place <= last; place++) {
    const at = line * lineStride + place * placeStride;
    const here = window.overEyeM[at]!;
    const behind = window.overEyeM[at - step * lineStride]!;
    abreast[place] = (behind + (here - behind) * (1 - ahead)) / window.cellSizeM;
  }
}

interface LineTargets {
  /** Rise over run that the height of the target adds. */
  extraRise: number;
  low: number;
  high: number;
  eyePlace: number;
  distance: number;
  base: number;
  placeStride: number;
}

/** Holds every target on a line against the skyline of all nearer lines. */
function markBehind(skyline: Chain, targetRise: Float64Array, task: SweepTask, targets: LineTargets): void {
  const { from, rise, perT, pieces } = skyline;
  const { extraRise, low, high, eyePlace, distance, base, placeStride } = targets;
  const { marks, mark } = task;
  let piece = 0;
  for (let place = low; place <= high; place++) {
    const at = base + place * placeStride;
    if (marks[at] !== SIGHT.visible) continue;
    const t = (place - eyePlace) / distance;
    while (piece + 1 < pieces && from[piece + 1]! <= t) piece++;
    const target = targetRise[place]! + extraRise;
    let hides = target < rise[piece]! + perT[piece]! * (t - from[piece]!);
    // At a break the line of sight touches both stretches.
    if (from[piece] === t && piece > 0) {
      hides ||= target < rise[piece - 1]! + perT[piece - 1]! * (t - from[piece - 1]!);
    }
    if (hides) marks[at] = mark;
  }
}

interface LinePlace {
  first: number;
  last: number;
  eyePlace: number;
  distance: number;
  /** Distance of the line before; 0 when there is none in view. */
  nearDistance: number;
  tLow: number;
  tHigh: number;
  voidRise: number;
}

/**
 * The ground of a line itself and of the cross lines between it and the line before, the higher of both. A cross line leaves
 * the centre it ends at away from the middle of the view, so that a gap between two centres holds at most one.
 */
function lineChain(out: Chain, rise: Float64Array, nearRise: Float64Array, place: LinePlace): void {
  const { from, rise: startRise, perT } = out;
  const { first, last, eyePlace, distance, nearDistance, tLow, tHigh, voidRise } = place;
  const hasNear = nearDistance > 0;
  const bothDistances = distance * nearDistance;
  const isOpen = voidRise === NEVER;
  let count = 0;
  for (let gap = first; gap < last; gap++) {
    const west = rise[gap]!;
    const east = rise[gap + 1]!;
    const westOffset = gap - eyePlace;
    const eastOffset = westOffset + 1;
    const tWestCentre = westOffset / distance;
    const tEastCentre = (gap + 1 - eyePlace) / distance;
    const tWest = Math.max(tWestCentre, tLow);
    const tEast = Math.min(tEastCentre, tHigh);
    if (!(tWest < tEast)) continue;
    const isKnown = !Number.isNaN(west) && !Number.isNaN(east);
    const slope = isKnown ? (east - west) * distance : 0;
    const start = isKnown ? west + slope * (tWest - tWestCentre) : voidRise;

    // Whether a cross line has to be put over the line, on its way east from the west centre or west from the east centre.
    let crossSlope = 0;
    let isHigher = false;
    let tEnd = 0;
    if (westOffset > 0) {
      crossSlope = hasNear
        ? ((nearRise[gap]! - west) * bothDistances) / westOffset
        : nearRise[gap]! / westOffset;
      const isCrossKnown = !Number.isNaN(crossSlope);
      isHigher = isCrossKnown ? (isKnown ? crossSlope > slope : isOpen) : isKnown && !isOpen;
      if (isHigher) {
        tEnd = hasNear ? westOffset / nearDistance : tEast;
        if (tEnd > tEast) tEnd = tEast;
        from[count] = tWest;
        startRise[count] = isCrossKnown ? west : voidRise;
        perT[count] = isCrossKnown ? crossSlope : 0;
        count++;
        if (tEnd < tEast) {
          from[count] = tEnd;
          startRise[count] = start + slope * (tEnd - tWest);
          perT[count] = slope;
          count++;
        }
        continue;
      }
    } else if (eastOffset < 0) {
      crossSlope = hasNear
        ? ((nearRise[gap + 1]! - east) * bothDistances) / eastOffset
        : nearRise[gap + 1]! / eastOffset;
      const isCrossKnown = !Number.isNaN(crossSlope);
      isHigher = isCrossKnown ? (isKnown ? crossSlope < slope : isOpen) : isKnown && !isOpen;
      if (isHigher) {
        tEnd = hasNear ? eastOffset / nearDistance : tWest;
        if (tEnd < tWest) tEnd = tWest;
        if (tEnd > tWest) {
          from[count] = tWest;
          startRise[count] = start;
          perT[count] = slope;
          count++;
        }
        from[count] = tEnd;
        startRise[count] = isCrossKnown ? east + crossSlope * (tEnd - tEastCentre) : voidRise;
        perT[count] = isCrossKnown ? crossSlope : 0;
        count++;
        continue;
      }
    }
    from[count] = tWest;
    startRise[count] = start;
    perT[count] = slope;
    count++;
  }
  out.pieces = count;
}
