import type { SharedData } from "../../../content/areaContent.ts";
import type { PackCheck } from "../../../content/schema/packSchema.ts";
import { orderChecks } from "../../../safety/orderChecks.ts";
import { sentenceStart } from "../../words/listWords.ts";
import { type CheckRow, subjectName } from "../checkRows.ts";
import { checkTitle } from "../checkTitle.ts";
import type { AreaPack, CautionBox } from "../sheetParts.ts";
import type { PackedTrip } from "./packedTrips.ts";
import type { PackTripDay } from "./sessionStops.ts";

/** The checks of a day from the worst, none dropped; those that are OK share a row with others of their kind. */
export function dayCheckRows(
  area: AreaPack,
  shared: SharedData,
  packed: PackedTrip,
  day: PackTripDay,
): CheckRow[] {
  const ordered = orderChecks(day.checks);
  const bad = ordered.filter((check) => check.result !== "OK");
  const fine = ordered.filter((check) => check.result === "OK");
  return [
    ...bad.map((check) => ({
      title: dayCheckTitle(check, area, shared, packed),
      result: check.result,
      text: check.text,
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

/** The two worst STOP or CAUTION checks of a day as Warning boxes. */
export function dayCautions(
  area: AreaPack,
  shared: SharedData,
  packed: PackedTrip,
  day: PackTripDay,
): CautionBox[] {
  return orderChecks(day.checks)
    .filter((check) => check.result === "STOP" || check.result === "CAUTION")
    .slice(0, 2)
    .map((check) => ({
      level: "warning",
      title: `${dayCheckTitle(check, area, shared, packed)}: ${check.result}`,
      text: check.text,
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
  return name === null ? check.text : `${sentenceStart(name)}: ${check.text}`;
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
