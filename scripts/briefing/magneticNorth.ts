import type { AreaContent } from "../content/areaContent.ts";
import type { PackFile } from "../content/schema/packSchema.ts";
import { magneticDeclination } from "../geo/declination.ts";
import type { Position } from "../geo/position.ts";
import { packAngle } from "./packNumbers.ts";

/**
 * Magnetic declination at a place on a day, east positive: the owner's own value where one is given, else the World Magnetic
 * Model. Null with the reason outside its years or near a magnetic pole.
 */
export function declinationAt(
  area: AreaContent,
  position: Position,
  elevationM: number | null,
  localDate: string,
): { declinationDeg: number | null; why: string | null } {
  const given = area.facts.magnetic;
  if (given !== undefined) return { declinationDeg: given.declinationDeg, why: null };
  const { declinationDeg, why } = magneticDeclination(position, elevationM ?? 0, localDate);
  return { declinationDeg, why: why.declinationDeg ?? null };
}

/** The area's magnetic north for pack.json, at its centre on the table date. */
export function packMagnetic(
  area: AreaContent,
  elevationM: number | null,
  tableDate: string,
): { magnetic: PackFile["area"]["magnetic"]; why: string | null } {
  const given = area.facts.magnetic;
  if (given !== undefined) {
    const { declinationDeg, date, source } = given;
    return {
      magnetic: { declinationDeg: packAngle(declinationDeg), yearlyChangeDeg: null, date, model: source },
      why: null,
    };
  }
  const found = magneticDeclination(area.facts.centre, elevationM ?? 0, tableDate);
  if (found.declinationDeg === null) return { magnetic: null, why: found.why.declinationDeg ?? "not known" };
  return {
    magnetic: {
      declinationDeg: packAngle(found.declinationDeg),
      yearlyChangeDeg: found.yearlyChangeDeg === null ? null : packAngle(found.yearlyChangeDeg),
      date: tableDate,
      model: found.model,
    },
    why: null,
  };
}
