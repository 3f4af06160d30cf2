import type { SharedData } from "../../../content/areaContent.ts";
import type { PackCheck } from "../../../content/schema/packSchema.ts";
import { orderChecks } from "../../../safety/orderChecks.ts";
import { sentenceStart } from "../../words/listWords.ts";
import { type CheckRow, subjectName } from "../checkRows.ts";
import { checkText } from "../checkText.ts";
import { checkTitle } from "../checkTitle.ts";
import type { AreaPack, CautionBox } from "../sheetParts.ts";
import type { PackedTrip } from "./packedTrips.ts";
import type { PackTripDay } from "./sessionStops.ts";

// their figures stand in the light, the schedule or the contacts of the sheet, or on the site card
const TOLD_ELSEWHERE = ["C1", "C5", "C8", "C12", "C13", "C14", "C15", "C18", "C22", "C23"];

/**
 * The checks of a day from the worst. Those that are OK share a row with others of their kind; those of them whose figures
 * stand elsewhere are named by `okElsewhere`.
 */
export function dayCheckRows(
  area: AreaPack,
  shared: SharedData,
  packed: PackedTrip,
  day: PackTripDay,
): CheckRow[] {
  const ordered = orderChecks(day.checks);
  const bad = ordered.filter((check) => check.result !== "OK");
  const fine = ordered.filter((check) => check.result === "OK" && !TOLD_ELSEWHERE.includes(check.id));
  return [
    ...bad.map((check) => ({
      title: dayCheckTitle(check, area, shared, packed),
      result: check.result,
      text: checkText(check, area),
      pen: check.result === "NOT CHECKED",
    })),
    ...[...new Set(fine.map((check) => check.id))].map((id) => ({
      title: checkTitle(id),
      result: "OK" as const,
      text: fine
        .filter((check) => check.id === id)
        .map((check) => withSubject(check, area, shared, packed))
        .join(" "),
      pen: false,
    })),
  ];
}

/** "Trunk and stand, Odell, Fenna; tree, site 4 ...": what was OK by figures that stand elsewhere; null for none. */
export function okElsewhere(
  area: AreaPack,
  shared: SharedData,
  packed: PackedTrip,
  day: PackTripDay,
): string | null {
  const fine = orderChecks(day.checks).filter(
    (check) => check.result === "OK" && TOLD_ELSEWHERE.includes(check.id),
  );
  const ids = [...new Set(fine.map((check) => check.id))];
  const parts = ids.map((id) => {
    const names = fine
      .filter((check) => check.id === id)
      .flatMap((check) => dayCheckSubject(check, area, shared, packed) ?? []);
    return [checkTitle(id), ...new Set(names)].join(", ");
  });
  return parts.length === 0 ? null : `${parts.join("; ")}.`;
}

/** The two worst STOP or CAUTION checks of a day as Warning boxes; one of them may tell that the forecast is old. */
export function dayCautions(
  area: AreaPack,
  shared: SharedData,
  packed: PackedTrip,
  day: PackTripDay,
): (CautionBox & { isOldForecast: boolean })[] {
  const sessions = day.sessions.map(({ session }) => session);
  return orderChecks(day.checks)
    .filter((check) => check.result === "STOP" || check.result === "CAUTION")
    .slice(0, 2)
    .map((check) => ({
      level: "warning",
      title: `${dayCheckTitle(check, area, shared, packed)}: ${check.result}`,
      text: checkText(check, area),
      isOldForecast: check.id === "C26" && sessions.includes(check.subject),
    }));
}

/** "Load, Garrick", "Thunder, evening": what was checked and of whom or what. */
function dayCheckTitle(check: PackCheck, area: AreaPack, shared: SharedData, packed: PackedTrip): string {
  const title = checkTitle(check.id);
  const name = dayCheckSubject(check, area, shared, packed);
  return name === null ? title : `${title}, ${name}`;
}

/** The sentence of a check, led by whom or what it is about. */
function withSubject(check: PackCheck, area: AreaPack, shared: SharedData, packed: PackedTrip): string {
  const name = dayCheckSubject(check, area, shared, packed);
  const text = checkText(check, area);
  return name === null ? text : `${sentenceStart(name)}: ${text}`;
}

/** A hunter, a session, or what the owner named; null for the whole trip or area. */
function dayCheckSubject(
  { subject }: PackCheck,
  area: AreaPack,
  shared: SharedData,
  { trip, written }: PackedTrip,
): string | null {
  if (subject === trip.id || subject === area.pack.area.id) return null;
  const hunter = written.facts.hunters.find(({ id }) => id === subject)?.name;
  if (hunter !== undefined) return hunter;
  if (area.details.sessions.some(({ id }) => id === subject)) return subject;
  return subjectName(subject, area, shared);
}
