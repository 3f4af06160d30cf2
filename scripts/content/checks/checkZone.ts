import { civilAt, isTimezone } from "../../time/civilTime.ts";
import type { AreaDraft } from "../areaDraft.ts";
import { nearestWord } from "../nearestWord.ts";
import type { Problem } from "../problem.ts";
import { asWritten } from "../schemaProblems.ts";
import { wholePosition } from "./wholePosition.ts";

const FAR_FROM_ZONE_H = 3.5; // the widest zones in use reach about 3 h from their sun time

/** The time zone: one that is known, and one that can be in use at the centre of the area. */
export function checkZone(draft: AreaDraft): Problem[] {
  const { file, loose } = draft.area;
  const zone = loose?.timezone;
  const centre = wholePosition(loose?.centre);
  const problems = [
    ...unknownZone(file, "timezone", zone),
    ...draft.cameras.flatMap((camera) => unknownZone(camera.file, "timezone", camera.loose?.timezone)),
  ];
  if (zone === undefined || !isTimezone(zone) || centre === null) return problems;
  const offsetH = standardOffsetH(zone);
  const gapH = hoursBetween(offsetH, centre.lon / 15);
  if (gapH <= FAR_FROM_ZONE_H) return problems;
  const found = `${zone} at longitude ${centre.lon}: clock and sun ${gapH.toFixed(1)} h apart`;
  if (Math.abs(centre.lon) <= 90 && hoursBetween(offsetH, centre.lat / 15) <= FAR_FROM_ZONE_H) {
    const fix = `lat and lon look exchanged: write "centre": { "lat": ${centre.lon}, "lon": ${centre.lat} }`;
    const expected = "a place where the zone can be in use";
    problems.push({ code: "position-swapped", file, field: "centre", found, expected, fix });
  } else {
    problems.push({
      severity: "warning",
      code: "timezone-far",
      file,
      field: "timezone",
      found,
      expected: `a zone whose standard time is within ${FAR_FROM_ZONE_H} h of the sun time of the centre`,
      fix: "check the sign of the longitude, and the zone",
    });
  }
  return problems;
}

function unknownZone(file: string, field: string, zone: string | undefined): Problem[] {
  if (zone === undefined || isTimezone(zone)) return [];
  const near = nearestWord(zone, Intl.supportedValuesOf("timeZone"));
  const fix = near
    ? `write ${JSON.stringify(near)}`
    : "write a name of the IANA list, not an offset or a short name";
  const expected = 'a name of the IANA time zone list, such as "Pacific/Auckland"';
  return [{ code: "timezone-unknown", file, field, found: asWritten(zone), expected, fix }];
}

/** Standard time against UTC in a fixed year, so that the answer does not hang on the day of the build. */
function standardOffsetH(zone: string): number {
  const offsets = ["2026-01-15T00:00:00Z", "2026-07-15T00:00:00Z"].map(
    (at) => civilAt(new Date(at), zone).utcOffsetMin,
  );
  return Math.min(...offsets) / 60;
}

function hoursBetween(a: number, b: number): number {
  const apart = (((a - b) % 24) + 24) % 24;
  return Math.min(apart, 24 - apart);
}
