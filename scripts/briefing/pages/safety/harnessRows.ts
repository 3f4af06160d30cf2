import type { AreaPack } from "../sheetParts.ts";
import { packedTrips } from "../trips/packedTrips.ts";

/** Dates of one hunter's harness; null is a blank for the pen. */
export interface HarnessRow {
  hunter: string;
  madeOn: string | null;
  replaceBy: string | null;
  /** in words, null when nobody said */
  fallen: string | null;
}

/** The harness of every hunter of the packed trips, each once. */
export function harnessRows(area: AreaPack): HarnessRow[] {
  const rows = packedTrips(area).flatMap(({ written }) =>
    written.facts.hunters.map(({ name, harness }) => ({
      hunter: name,
      madeOn: harness.madeOn,
      replaceBy: harness.replaceBy,
      fallen: harness.fallen === null ? null : harness.fallen ? "yes: finished" : "no",
    })),
  );
  return rows.filter(
    (row, i) => rows.findIndex((other) => JSON.stringify(other) === JSON.stringify(row)) === i,
  );
}
