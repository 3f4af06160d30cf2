import type { SharedData } from "../../../content/areaContent.ts";
import { decimalDegreesText } from "../../../geo/coordinateText.ts";
import { gridText } from "../../../geo/mgrs.ts";
import { dateSpanText } from "../../words/dateText.ts";
import { listWords } from "../../words/listWords.ts";
import type { PenPiece } from "../../words/penLine.ts";
import { type AreaFrame, areaSheetBase } from "../areaFrame.ts";
import { type PenRow, penRow } from "../penRow.ts";
import type { AreaPack, PageLink, Sheet } from "../sheetParts.ts";
import { standingLine } from "../standingLines.ts";
import { type OverdueRow, overdueRows } from "./overdueRows.ts";
import { overdueScript } from "./overdueScript.ts";
import type { PackedTrip } from "./packedTrips.ts";
import { type PlannedSit, plannedSits } from "./plannedSits.ts";
import { type TripPerson, tripPeople } from "./tripPeople.ts";

/** What does home do if we are late? With a slip to tear off. */
export interface IntentionsSheet extends Sheet {
  overdue: OverdueRow[];
  overdueNote: string;
  steps: string[];
  script: PenPiece[][];
  sits: PlannedSit[];
  /** a blank line for each person when no sit is written */
  blankSits: string[];
  people: TripPerson[];
  trip: PenRow[];
  planChanges: string;
  tearOff: { title: string; people: string; rows: PenRow[]; overdue: OverdueRow[]; last: string };
  emergency: PageLink;
}

/** A sheet for every trip of the pack. */
export function intentionsSheets(
  frame: AreaFrame,
  packed: readonly PackedTrip[],
  shared: SharedData,
): IntentionsSheet[] {
  return packed.map((trip) => intentionsSheet(frame, trip, shared));
}

function intentionsSheet(frame: AreaFrame, packed: PackedTrip, shared: SharedData): IntentionsSheet {
  const { area } = frame;
  const { written, trip } = packed;
  const { locale, timezone } = area.pack.area;
  const overdue = overdueRows(area, packed);
  const sits = plannedSits(area, packed);
  const people = listWords(written.facts.hunters.map((hunter) => hunter.name));
  const number = area.content.facts.emergency.number ?? null;
  const dates = dateSpanText(trip.from, trip.to, locale);
  const base = basePlace(area, packed);
  const vehicle = vehicleText(area, packed);
  return {
    ...areaSheetBase(frame, {
      permalink: `${frame.folder}trips/${trip.id}/intentions.html`,
      pageName: "Trip intentions",
      title: `Trip intentions: ${written.facts.name}`,
      answer: answerOf(overdue),
      exception: standingLine(shared, "planChanges"),
      cautions: [],
    }),
    overdue,
    overdueNote: `Clock times of ${timezone}. They are set before the trip, not by feeling.`,
    steps: [
      "Start asking: try the person.",
      "Then try the party, friends and the camp.",
      "Wait until the second time. Try again.",
      "Call for help: ring the number, ask for the police or the local rescue body.",
      "Read the text below aloud. Stay by the phone.",
    ],
    script: overdueScript({ areaName: area.pack.area.name, people, vehicle, base: base?.name ?? null }),
    sits,
    blankSits: sits.length === 0 ? written.facts.hunters.map((hunter) => hunter.name) : [],
    people: tripPeople(area, shared, packed),
    trip: [
      penRow(
        "Trip",
        `${dates}, ${written.facts.species ?? "species not written"}, ${written.facts.method ?? "weapon not written"}`,
      ),
      penRow("Staying at", base?.text),
      penRow("Vehicle", vehicle),
      penRow("Route, other ways", null),
      penRow("Check-in", written.facts.checkIn),
      penRow("Devices carried", null),
      penRow("Food, shelter, skills", null),
      penRow("Dog", null),
      penRow("Number to call", number),
    ],
    planChanges: standingLine(shared, "planChanges"),
    tearOff: {
      title: `${area.pack.area.name}, ${dates}`,
      people,
      rows: [
        penRow("Vehicle", vehicle),
        penRow("Staying at", base?.text),
        penRow("Number to call", number),
        penRow("Contact, phone", null),
      ],
      overdue,
      last: "Not back at the second time: call for help and read out the sites of the sheet.",
    },
    emergency: { href: "../../emergency.html", text: "Emergency page, the last sheet" },
  };
}

function answerOf(overdue: readonly OverdueRow[]): { core: string; rest: string | null } {
  const last = overdue.at(-1);
  if (last === undefined || last.ask === null || last.call === null) {
    return {
      core: "Start asking and call for help at the times you write in below.",
      rest: "Nothing here may stay blank.",
    };
  }
  return {
    core: `Last day: start asking at ${last.ask}, call for help at ${last.call}.`,
    rest: "Each day has its own two times below.",
  };
}

function basePlace(area: AreaPack, { written }: PackedTrip): { name: string; text: string } | null {
  const { camps, parkings } = area.content.facts;
  const base = [...camps, ...parkings].find((place) => place.id === written.facts.base);
  return base === undefined
    ? null
    : {
        name: base.name,
        text: `${base.name}, ${decimalDegreesText(base.position)}; ${gridText(base.position)}, WGS 84`,
      };
}

function vehicleText(area: AreaPack, { written }: PackedTrip): string | null {
  const { vehicle } = written.facts;
  if (vehicle === undefined) return null;
  return vehicle.plate === undefined || area.pack.edition !== "owner"
    ? vehicle.text
    : `${vehicle.text}, plate ${vehicle.plate}`;
}
