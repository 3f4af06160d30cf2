import { daysBetween } from "../../time/civilTime.ts";
import type { AreaDraft } from "../areaDraft.ts";
import { MOST_TRIP_DAYS } from "../limits.ts";
import type { Problem } from "../problem.ts";
import { SHOOTING_LAYERS } from "../schema/shootingRuleSchema.ts";

/** Pairs that must be in order: first and last dates, least and most of a range; and days that must lie in a trip. */
export function checkOrder(draft: AreaDraft): Problem[] {
  return [
    ...areaDates(draft),
    ...draft.trips.flatMap(tripDates),
    ...siteRanges(draft),
    ...rosterDates(draft),
  ];
}

interface At {
  file: string;
  field: string;
}

function dates(at: At, from: string | undefined | null, to: string | undefined | null): Problem[] {
  if (!from || !to || from <= to) return [];
  return [
    {
      ...at,
      code: "date-order",
      found: `${from} to ${to}`,
      expected: "a last date that is not before the first",
      fix: `exchange the two, or correct the year: "from": "${to}", "to": "${from}"`,
    },
  ];
}

function range(at: At, low: number | undefined, high: number | undefined): Problem[] {
  if (low === undefined || high === undefined || low <= high) return [];
  const expected = "the smaller number first";
  return [
    { ...at, code: "order-of-two", found: `[${low}, ${high}]`, expected, fix: `write [${high}, ${low}]` },
  ];
}

function areaDates(draft: AreaDraft): Problem[] {
  const { file, loose } = draft.area;
  const problems: Problem[] = [];
  for (const list of ["season", "permission"] as const) {
    for (const [i, entry] of (loose?.[list] ?? []).entries()) {
      problems.push(...dates({ file, field: `${list}.${i}.to` }, entry?.from, entry?.to));
    }
  }
  const rules = loose?.standRules;
  problems.push(...dates({ file, field: "standRules.removeBy" }, rules?.from, rules?.removeBy));
  for (const layer of SHOOTING_LAYERS) {
    for (const [i, rule] of (loose?.shootingLight?.[layer] ?? []).entries()) {
      const at = { file, field: `shootingLight.${layer}.${i}.valid.to` };
      problems.push(...dates(at, rule?.valid?.from, rule?.valid?.to));
    }
  }
  return problems;
}

function tripDates({ file, loose, id }: AreaDraft["trips"][number]): Problem[] {
  const { from, to } = loose ?? {};
  const problems = dates({ file, field: "to" }, from, to);
  if (from && to && from <= to && daysBetween(from, to) + 1 > MOST_TRIP_DAYS) {
    problems.push({
      code: "trip-too-long",
      file,
      field: "to",
      found: `${daysBetween(from, to) + 1} days`,
      expected: `at most ${MOST_TRIP_DAYS} days`,
      fix: `split the trip, or correct the year of the date; a second part may be ${id}-2.json`,
    });
  }
  for (const [i, sit] of (loose?.sits ?? []).entries()) {
    const day = sit?.localDate;
    if (!day || !from || !to || from > to || (day >= from && day <= to)) continue;
    problems.push({
      code: "date-outside",
      file,
      field: `sits.${i}.localDate`,
      found: day,
      expected: `a day of the trip, ${from} to ${to}`,
      fix: "correct the date of the sit, or the dates of the trip",
    });
  }
  return problems;
}

function siteRanges(draft: AreaDraft): Problem[] {
  return draft.sites.flatMap(({ file, loose }) => {
    const problems: Problem[] = [];
    for (const [session, list] of Object.entries(loose?.approaches ?? {})) {
      for (const [i, approach] of (list ?? []).entries()) {
        const [nearest, farthest] = approach?.distanceM ?? [];
        problems.push(...range({ file, field: `approaches.${session}.${i}.distanceM` }, nearest, farthest));
      }
    }
    for (const [i, walkIn] of (loose?.walkIns ?? []).entries()) {
      const [least, most] = walkIn?.minutes ?? [];
      problems.push(...range({ file, field: `walkIns.${i}.minutes` }, least, most));
    }
    problems.push(
      ...dates({ file, field: "stand.removeBy" }, loose?.stand?.placedOn, loose?.stand?.removeBy),
    );
    return problems;
  });
}

function rosterDates(draft: AreaDraft): Problem[] {
  const { roster } = draft;
  return (roster?.loose?.rows ?? []).flatMap((row, i) =>
    dates({ file: roster!.file, field: `rows.${i}.to` }, row?.from, row?.to),
  );
}
