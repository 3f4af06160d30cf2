import type { ModelConstants } from "../air/modelConstants.ts";
import type { Position } from "../geo/position.ts";
import { type SunTable, sunTable } from "../light/sunTable.ts";
import { endOfDay, startOfDay } from "../time/civilTime.ts";

const STEP_MIN = 5;
const MINUTE_MS = 60_000;
const RUN_OUT_MIN = 4 * 60;

export type SunTableOf = (localDate: string) => SunTable;

/**
 * The sun over an area through a local day, with the hours before and after that the slope air needs; made once for each day
 * and used for all sites, which lie so near that the sun stands within a few thousandths of a degree of the same place.
 */
export function sunTablesOf(centre: Position, timezone: string, constants: ModelConstants): SunTableOf {
  const made = new Map<string, SunTable>();
  return (localDate) => {
    let table = made.get(localDate);
    if (table === undefined) {
      const startMs = startOfDay(localDate, timezone).getTime() - constants.runInMin * MINUTE_MS;
      const endMs = endOfDay(localDate, timezone).getTime() + RUN_OUT_MIN * MINUTE_MS;
      const count = Math.ceil((endMs - startMs) / (STEP_MIN * MINUTE_MS)) + 1;
      table = sunTable(centre, new Date(startMs), STEP_MIN, count);
      made.set(localDate, table);
    }
    return table;
  };
}
