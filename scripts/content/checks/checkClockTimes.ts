import { daysBetween, eachDay, isTimezone, resolveClock } from "../../time/civilTime.ts";
import type { AreaDraft } from "../areaDraft.ts";
import { MOST_TRIP_DAYS } from "../limits.ts";
import type { Problem } from "../problem.ts";
import { SHOOTING_LAYERS } from "../schema/shootingRuleSchema.ts";

interface WrittenClock {
  file: string;
  field: string;
  clock: string;
  fix: string;
  /** Days on which the clock time is used; absent when it is used on every day of a trip. */
  isUsedOn?: (localDate: string) => boolean;
}

/**
 * Clock times that do not exist, or come twice, on a day they are used: each hour of a forecast on its date, and the
 * clock times of sessions, rules and local notes on every day of every trip. Times given as standard or daylight time
 * are never in doubt.
 */
export function checkClockTimes(draft: AreaDraft): Problem[] {
  const timezone = draft.area.loose?.timezone;
  if (timezone === undefined || !isTimezone(timezone)) return [];
  const daily = [...sessionClocks(draft), ...ruleClocks(draft), ...noteClocks(draft)];
  const onTripDays = tripDays(draft).flatMap((day) =>
    daily
      .filter(({ isUsedOn }) => isUsedOn?.(day) ?? true)
      .flatMap((written) => doubtfulClock(written, day, timezone)),
  );
  return [...onTripDays, ...forecastHours(draft, timezone), ...tableRows(draft, timezone)];
}

function doubtfulClock(written: WrittenClock, localDate: string, timezone: string): Problem[] {
  const { file, field, clock, fix } = written;
  const resolved = resolveClock(localDate, clock, timezone);
  if (resolved.kind === "one") return [];
  const isGap = resolved.kind === "gap";
  return [
    {
      code: isGap ? "time-gap" : "time-repeated",
      file,
      field,
      found: `${clock} on ${localDate}, which ${isGap ? "clocks go forward over" : "comes twice as clocks go back"} (${timezone})`,
      expected: "a clock time that stands for one instant on each day it is used",
      fix,
    },
  ];
}

function tripDays(draft: AreaDraft): string[] {
  const days = new Set<string>();
  for (const { loose } of draft.trips) {
    const { from, to } = loose ?? {};
    if (!from || !to || from > to || daysBetween(from, to) >= MOST_TRIP_DAYS) continue;
    for (const day of eachDay(from, to)) days.add(day);
  }
  return [...days].sort();
}

/** What a moment of a session or a rule may hold, as far as it could be read. */
interface WrittenMoment {
  anchor?: string | undefined;
  at?: string | undefined;
  clock?: string | undefined;
  notBefore?: string | undefined;
  notAfter?: string | undefined;
}

function clocksOf(moment: WrittenMoment | undefined): { name: string; clock: string }[] {
  const { anchor, at, clock = "as-in-force", notBefore, notAfter } = moment ?? {};
  const inForce = anchor === "clock" && clock === "as-in-force" ? at : undefined;
  return Object.entries({ at: inForce, notBefore, notAfter }).flatMap(([name, written]) =>
    written === undefined ? [] : { name, clock: written },
  );
}

function sessionClocks(draft: AreaDraft): WrittenClock[] {
  const { file, loose } = draft.area;
  const fix = "write a time before or after the change of the clock, or an anchor of the sun";
  return (loose?.sessions ?? []).flatMap((session, i) =>
    (["from", "to"] as const).flatMap((end) =>
      clocksOf(session?.[end]).map(({ name, clock }) => ({
        file,
        field: `sessions.${i}.${end}.${name}`,
        clock,
        fix,
      })),
    ),
  );
}

function ruleClocks(draft: AreaDraft): WrittenClock[] {
  const { file, loose } = draft.area;
  const fix = 'say which clock the rule means: add "clock": "standard" or "clock": "daylight"';
  return SHOOTING_LAYERS.flatMap((layer) =>
    (loose?.shootingLight?.[layer] ?? []).flatMap((rule, i) => {
      const { from = "", to = "9999-12-31" } = rule?.valid ?? {};
      const isUsedOn = (localDate: string): boolean => localDate >= from && localDate <= to;
      return (rule?.windows ?? []).flatMap((window, j) =>
        (["start", "end"] as const).flatMap((end) =>
          clocksOf(window?.[end]).map(({ name, clock }) => ({
            file,
            field: `shootingLight.${layer}.${i}.windows.${j}.${end}.${name}`,
            clock,
            fix,
            isUsedOn,
          })),
        ),
      );
    }),
  );
}

function noteClocks(draft: AreaDraft): WrittenClock[] {
  const fix = "write a time before or after the change of the clock";
  return draft.sites.flatMap(({ file, loose }) =>
    (loose?.localNotes ?? []).flatMap((note, i) =>
      note?.turnsAt === undefined ? [] : { file, field: `localNotes.${i}.turnsAt`, clock: note.turnsAt, fix },
    ),
  );
}

function forecastHours(draft: AreaDraft, timezone: string): Problem[] {
  const fix = "take an hour before or after the change; a row holds until the next of its day";
  return draft.trips.flatMap(({ file, loose, forecastFile }) => {
    const written = (loose?.forecast?.rows ?? []).map((row, i) => ({
      at: { file, field: `forecast.rows.${i}.hour` },
      row,
    }));
    const fromFile = (forecastFile?.rows ?? []).map(({ line, row }) => ({
      at: { file: forecastFile!.file, field: `line ${line}, hour` },
      row,
    }));
    return [...written, ...fromFile].flatMap(({ at, row }) =>
      row?.hour === undefined || row.localDate === undefined
        ? []
        : doubtfulClock({ ...at, clock: row.hour, fix }, row.localDate, timezone),
    );
  });
}

function tableRows(draft: AreaDraft, timezone: string): Problem[] {
  const fix = "ask the authority which of the two is meant, and give the rule without this day";
  return Object.entries(draft.shootingTables).flatMap(([name, rows]) =>
    rows.flatMap((row) => {
      if (!("localDate" in row)) return [];
      const file = `${draft.shown}/${name}`;
      return ([row.start, row.end] as const).flatMap((clock) =>
        doubtfulClock({ file, field: row.localDate, clock, fix }, row.localDate, timezone),
      );
    }),
  );
}
