import { signedDifferenceDeg } from "../../scripts/geo/bearings.ts";
import { magneticDeclination } from "../../scripts/geo/declination.ts";
import { distanceAndBearing } from "../../scripts/geo/geodesic.ts";
import { gridConvergenceDeg, toUtm } from "../../scripts/geo/utm.ts";
import { daylight } from "../../scripts/light/daylight.ts";
import { type ComparedEvent, compareMoon, compareMoonLight, compareSun } from "./almanacComparison.ts";
import { PUBLISHED_LINES } from "./geodesicLines.ts";
import { PUBLISHED_GRID_PLACES } from "./gridPlaces.ts";
import { localClock } from "./localClock.ts";
import { PUBLISHED_DECLINATIONS } from "./magneticField.ts";
import { PUBLISHED_SUN_DAYS, SUN_DAY_FIELDS } from "./sunDays.ts";

/** Ours minus the reference, in the table's unit. */
export interface AccuracyRow {
  place: string;
  field: string;
  error: number;
}

/** One comparison of the project's numbers with published or independent ones. */
export interface AccuracyTable {
  title: string;
  unit: string;
  rows: () => AccuracyRow[];
}

/** Every comparison that the accuracy report prints. A new room adds its tables at the end. */
export const ACCURACY_TABLES: readonly AccuracyTable[] = [
  { title: "Sun, 22 published days", unit: "s", rows: publishedSunRows },
  {
    title: "Sun against an independent almanac, below 60 degrees",
    unit: "s",
    rows: () => sunRows((lat) => lat < 60),
  },
  {
    title: "Sun against an independent almanac, 60 to 65 degrees",
    unit: "s",
    rows: () => sunRows((lat) => lat >= 60 && lat <= 65),
  },
  {
    title: "Sun against an independent almanac, above 65 degrees",
    unit: "s",
    rows: () => sunRows((lat) => lat > 65),
  },
  {
    title: "Sun, events printed with about",
    unit: "s",
    rows: () => timed(compareSun().filter((row) => row.isAbout)),
  },
  {
    title: "Moonrise and moonset against an independent almanac",
    unit: "s",
    rows: () => timed(compareMoon()),
  },
  { title: "Lit share of the moon against an independent almanac", unit: "share", rows: moonLightRows },
  { title: "Geodesic distance, Karney", unit: "m", rows: distanceRows },
  { title: "UTM easting and northing, GeoConvert", unit: "m", rows: utmRows },
  { title: "Grid convergence, GeoConvert", unit: "deg", rows: convergenceRows },
  { title: "Magnetic declination, WMM2025 test values", unit: "deg", rows: declinationRows },
];

function publishedSunRows(): AccuracyRow[] {
  return PUBLISHED_SUN_DAYS.flatMap(({ id, place, position, timezone, localDate, events }) => {
    const ours = daylight(localDate, position, timezone);
    return SUN_DAY_FIELDS.flatMap((field) => {
      const published = events[field];
      const at = ours[field];
      if (published === null || at === null) return [];
      const theirs = localClock(localDate, published, timezone);
      return [{ place: `${id} ${place}`, field, error: (at.getTime() - theirs.getTime()) / 1000 }];
    });
  });
}

function sunRows(isInBand: (absLat: number) => boolean): AccuracyRow[] {
  return timed(compareSun().filter((row) => !row.isAbout && isInBand(Math.abs(row.position.lat))));
}

function timed(events: ComparedEvent[]): AccuracyRow[] {
  return events.flatMap(({ place, localDate, field, errorS }) =>
    errorS === null ? [] : [{ place: `${place} ${localDate}`, field, error: errorS }],
  );
}

function moonLightRows(): AccuracyRow[] {
  return compareMoonLight().map(({ row, error }) => ({
    place: `${row.place} ${row.localDate}`,
    field: "illuminated",
    error,
  }));
}

function distanceRows(): AccuracyRow[] {
  return PUBLISHED_LINES.filter((row) => row.toleranceM < 0.1).map((row) => ({
    place: row.id,
    field: "distanceM",
    error: distanceAndBearing(row.from, row.to).distanceM - row.distanceM,
  }));
}

function utmRows(): AccuracyRow[] {
  return PUBLISHED_GRID_PLACES.filter((row) => row.toleranceM < 0.1).flatMap((row) => {
    const { eastingM, northingM } = toUtm(row.position, row.zone);
    return [
      { place: row.place, field: "eastingM", error: eastingM - row.eastingM },
      { place: row.place, field: "northingM", error: northingM - row.northingM },
    ];
  });
}

function convergenceRows(): AccuracyRow[] {
  return PUBLISHED_GRID_PLACES.map((row) => ({
    place: row.place,
    field: "convergenceDeg",
    error: signedDifferenceDeg(row.convergenceDeg, gridConvergenceDeg(row.position, row.zone)),
  }));
}

function declinationRows(): AccuracyRow[] {
  return PUBLISHED_DECLINATIONS.flatMap(({ id, lat, lon, heightM, localDate, declinationDeg }) => {
    const found = magneticDeclination({ lat, lon }, heightM, localDate).declinationDeg;
    return found === null ? [] : [{ place: id, field: "declinationDeg", error: found - declinationDeg }];
  });
}
