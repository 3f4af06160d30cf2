import type { AreaDraft, TripDraft } from "../areaDraft.ts";
import type { Loose } from "../loose.ts";
import type { Problem } from "../problem.ts";
import type { ForecastRow } from "../schema/tripSchema.ts";

/** What a trip says twice: a hunter or a site in two sits of one session, two forecast rows for one time; and its forecast file. */
export function checkTrips(draft: AreaDraft): Problem[] {
  return draft.trips.flatMap((trip) => [...sitsTwice(trip), ...forecastProblems(trip)]);
}

function sitsTwice({ file, loose }: TripDraft): Problem[] {
  const sits = loose?.sits ?? [];
  return sits.flatMap((sit, i) => {
    if (!sit?.localDate || !sit.session || !sit.hunter || !sit.site) return [];
    const at = `${sit.localDate} ${sit.session}`;
    const earlier = sits.slice(0, i).find((other) => {
      if (other?.localDate !== sit.localDate || other?.session !== sit.session) return false;
      return other?.hunter === sit.hunter || other?.site === sit.site;
    });
    if (!earlier) return [];
    return {
      code: "sit-twice" as const,
      file,
      field: `sits.${i}`,
      found: `${at}: ${earlier.hunter} at ${earlier.site}, and ${sit.hunter} at ${sit.site}`,
      expected: "each hunter on one site, and each site with one hunter, in a session",
      fix: "delete or change one of the two sits",
    };
  });
}

interface WrittenRow {
  file: string;
  field: string;
  row: Loose<ForecastRow> | undefined;
}

function forecastProblems({ file, id, loose, forecastFile }: TripDraft): Problem[] {
  const problems: Problem[] = [];
  if (forecastFile && loose && loose.forecast === undefined) {
    problems.push({
      code: "forecast-head",
      file,
      field: "forecast",
      found: `${id}.forecast.csv, and no forecast in ${id}.json`,
      expected: "source, issuedAt and units of the rows",
      fix: 'add "forecast": { "source": "", "issuedAt": "", "units": { "speed": "kmh", "temp": "C", "rain": "mm" } } and fill it in',
    });
  }
  const rows: WrittenRow[] = [
    ...(loose?.forecast?.rows ?? []).map((row, i) => ({ file, field: `forecast.rows.${i}`, row })),
    ...(forecastFile?.rows ?? []).map(({ line, row }) => ({
      file: forecastFile!.file,
      field: `line ${line}`,
      row,
    })),
  ];
  return [...problems, ...rowsTwice(rows), ...weakGusts(rows)];
}

function rowsTwice(rows: readonly WrittenRow[]): Problem[] {
  const firstOf = new Map<string, WrittenRow>();
  return rows.flatMap((written) => {
    const { file, field, row } = written;
    const when = row?.hour ?? row?.session;
    if (row?.localDate === undefined || when === undefined) return [];
    const key = `${row.localDate} ${when}`;
    const first = firstOf.get(key);
    if (!first) {
      firstOf.set(key, written);
      return [];
    }
    const found = `${key}, also at ${first.file === file ? "" : `${first.file} `}${first.field}`;
    const fix = "delete the row of the older forecast";
    return [{ code: "forecast-twice", file, field, found, expected: "one row for each time", fix } as const];
  });
}

function weakGusts(rows: readonly WrittenRow[]): Problem[] {
  return rows.flatMap(({ file, field, row }) => {
    const { gust, windSpeed } = row ?? {};
    if (typeof gust !== "number" || typeof windSpeed !== "number" || gust >= windSpeed) return [];
    return {
      severity: "warning" as const,
      code: "forecast-gust" as const,
      file,
      field: field.startsWith("line") ? `${field}, gust` : `${field}.gust`,
      found: `gust ${gust}, mean wind ${windSpeed}`,
      expected: "a gust at least as strong as the mean wind",
      fix: "read both again, or write null for the gust",
    };
  });
}
