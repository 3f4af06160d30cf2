import { SIGHT } from "./sightRules.ts";
import type { Viewshed } from "./viewshed.ts";

/** Ground in view between two distances from the eye. */
export interface RingShare {
  fromM: number;
  toM: number;
  visibleCells: number;
  hiddenCells: number;
  unknownCells: number;
  /** Visible of visible and hidden, 0 to 1; null when not one cell of the ring is known. */
  visibleShare: number | null;
  /** Known cells of all that the whole ring has, 0 to 1: the rest is void, behind a void, or beyond the grid. */
  knownShare: number;
}

/**
 * Shares of ground in view by distance ring. A cell belongs to the ring that its centre lies in; the inner limit belongs to the
 * ring outside it.
 *
 * @param limitsM   rising distances; n limits make n - 1 rings
 * @throws {RangeError} when the limits do not rise, or go beyond the reach of the viewshed
 */
export function visibleShare(view: Viewshed, limitsM: readonly number[]): RingShare[] {
  limitsM.forEach((limitM, at) => {
    const least = at === 0 ? 0 : limitsM[at - 1]!;
    if (!(at === 0 ? limitM >= 0 : limitM > least) || limitM > view.reachM) {
      throw new RangeError(`limitsM must rise from 0 to ${view.reachM}, found ${limitsM.join(", ")}`);
    }
  });
  const { rows, columns, cellSizeM, sight, eye } = view;
  const eyeRow = (view.northM - eye.northingM) / cellSizeM;
  const eyeColumn = (eye.eastingM - view.westM) / cellSizeM;
  const reachCells = (limitsM.at(-1) ?? 0) / cellSizeM;
  const counts = limitsM.slice(1).map(() => ({ visible: 0, hidden: 0, unknown: 0, all: 0 }));
  const south = Math.ceil(eyeRow + reachCells);
  const east = Math.ceil(eyeColumn + reachCells);
  for (let row = Math.floor(eyeRow - reachCells); row <= south; row++) {
    for (let column = Math.floor(eyeColumn - reachCells); column <= east; column++) {
      const distanceM = Math.hypot(row - eyeRow, column - eyeColumn) * cellSizeM;
      const ring = counts[limitsM.findLastIndex((limitM) => distanceM >= limitM)];
      if (ring === undefined) continue;
      ring.all++;
      if (row < 0 || column < 0 || row >= rows || column >= columns) continue;
      const mark = sight[row * columns + column];
      if (mark === SIGHT.visible) ring.visible++;
      else if (mark === SIGHT.hidden) ring.hidden++;
      else if (mark === SIGHT.unknown) ring.unknown++;
    }
  }
  return counts.map(({ visible, hidden, unknown, all }, at) => ({
    fromM: limitsM[at]!,
    toM: limitsM[at + 1]!,
    visibleCells: visible,
    hiddenCells: hidden,
    unknownCells: unknown,
    visibleShare: visible + hidden === 0 ? null : visible / (visible + hidden),
    knownShare: all === 0 ? 0 : (visible + hidden) / all,
  }));
}
