import { unknownCoordinateSystem } from "./coordinateSystem.ts";
import type { CoordinateSystem } from "./elevationRaster.ts";

// WGS 84 and the datums within 2 m of it, as their names stand in .prj files.
const DATUM =
  /"(D_|GCS_)?(WGS[_ ]?(19)?84|World Geodetic System 1984|North_American_(Datum_)?1983|NAD83|European_Terrestrial_Reference_System_1989|ETRS_?(19)?89|NZGD_?2000|New_Zealand_Geodetic_Datum_2000|GDA2020|Geocentric_Datum_of_Australia_2020)[^"]*"/i;

/**
 * Coordinate system of a `.prj` file (well-known text, version 1), by its datum and its numbers, not by its title.
 *
 * @throws {TerrainError} terrain-crs with the title when it is not degrees or UTM on WGS 84 (or a datum within 2 m of it)
 */
export function parseProjectionText(text: string): CoordinateSystem {
  const title = /^\s*\w+\s*\[\s*"([^"]*)"/.exec(text)?.[1] ?? text.trim().slice(0, 60);
  const datum = /DATUM\s*\[\s*("[^"]*")/i.exec(text)?.[1] ?? "";
  if (!DATUM.test(datum)) throw unknownCoordinateSystem(title);
  if (/^\s*GEOGCS/i.test(text)) {
    if (!isDegree(text)) throw unknownCoordinateSystem(`${title}, not in degrees`);
    return { kind: "geographic" };
  }
  const zone = utmZoneIn(text);
  if (!/^\s*PROJCS/i.test(text) || zone === null) throw unknownCoordinateSystem(title);
  return { kind: "utm", zone };
}

function isDegree(text: string): boolean {
  const unit = /UNIT\s*\[\s*"[^"]*"\s*,\s*([\d.eE+-]+)/i.exec(text)?.[1];
  return unit !== undefined && Math.abs(Number(unit) - Math.PI / 180) < 1e-9;
}

function utmZoneIn(text: string): { number: number; hemisphere: "N" | "S" } | null {
  const value = (name: string): number | null => {
    const found = new RegExp(`PARAMETER\\s*\\[\\s*"${name}"\\s*,\\s*([\\d.eE+-]+)`, "i").exec(text)?.[1];
    return found === undefined ? null : Number(found);
  };
  // The last unit of a PROJCS is the unit of the projected coordinates.
  const units = [...text.matchAll(/UNIT\s*\[\s*"[^"]*"\s*,\s*([\d.eE+-]+)/gi)];
  const number = ((value("central_meridian") ?? Number.NaN) + 183) / 6;
  const falseNorthing = value("false_northing");
  const isUtm =
    /PROJECTION\s*\[\s*"Transverse_Mercator"/i.test(text) &&
    Math.abs((value("scale_factor") ?? 0) - 0.9996) < 1e-9 &&
    value("false_easting") === 500000 &&
    value("latitude_of_origin") === 0 &&
    (falseNorthing === 0 || falseNorthing === 10000000) &&
    units.length > 0 &&
    Number(units.at(-1)?.[1]) === 1 &&
    Number.isInteger(number) &&
    number >= 1 &&
    number <= 60;
  return isUtm ? { number, hemisphere: falseNorthing === 0 ? "N" : "S" } : null;
}
