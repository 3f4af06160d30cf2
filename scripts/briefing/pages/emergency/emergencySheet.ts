import type { SharedData } from "../../../content/areaContent.ts";
import type { PenPiece } from "../../words/penLine.ts";
import { type AreaFrame, areaSheetBase } from "../areaFrame.ts";
import { type PenRow, penRow } from "../penRow.ts";
import { type FactRow, fact, type Sheet } from "../sheetParts.ts";
import { packedTrips } from "../trips/packedTrips.ts";
import { accessRows, callingRows, helicopterRows, numberRows } from "./emergencyNumbers.ts";
import { type EmergencyPlace, emergencyPlaces, readAloud } from "./emergencyPlaces.ts";
import { emergencyScript } from "./emergencyScript.ts";

/** Something is wrong: what do I do and say now? The last sheet of the pack; nothing else stands on it. */
export interface EmergencySheet extends Sheet {
  doFirst: string[];
  script: PenPiece[][];
  places: EmergencyPlace[];
  readAloud: string | null;
  /** the owner's number and where a call gets through */
  calling: PenRow[];
  /** everybody else one may have to ring */
  numbers: PenRow[];
  access: PenRow[];
  helicopter: PenRow[];
  helicopterRule: string;
  firstAid: { title: string; lines: string[]; defersTo: string }[];
  /** what people consented to print; owner edition only */
  medical: FactRow[];
}

export function emergencySheet(frame: AreaFrame, shared: SharedData): EmergencySheet {
  const { area } = frame;
  const number = area.content.facts.emergency.number ?? null;
  const places = emergencyPlaces(area);
  return {
    ...areaSheetBase(frame, {
      permalink: `${frame.folder}emergency.html`,
      pageName: "Emergency",
      title: "Emergency",
      answer: {
        core: number === null ? "Call for help now." : `Call ${number}`,
        rest: "Read out the place from the table below, digit by digit.",
      },
      exception: null,
      cautions: [],
    }),
    doFirst: [
      "Look for danger to yourself. Unload every weapon.",
      "Stop heavy bleeding. Check breathing.",
      "After a fall keep the person still, unless the place itself is dangerous.",
      "Call now. Without a signal whistle 6 times a minute, and send somebody.",
      "Stay with the person. Keep them warm.",
    ],
    script: emergencyScript(area.pack.area.name),
    places,
    readAloud: readAloud(places),
    calling: [penRow("Number to call", number), ...callingRows(area)],
    numbers: numberRows(area),
    access: accessRows(area),
    helicopter: helicopterRows(area),
    helicopterRule:
      "Stay clear until the crew signals. Approach from the front, never from uphill, never from the tail.",
    firstAid: shared.emergency.firstAid.map(({ title, lines, defersTo }) => ({ title, lines, defersTo })),
    medical: medicalRows(frame),
  };
}

function medicalRows({ area }: AreaFrame): FactRow[] {
  if (area.pack.edition !== "owner") return [];
  const people = packedTrips(area).flatMap(({ written }) => written.facts.hunters);
  const rows = people.flatMap(({ name, medical }) => (medical === undefined ? [] : [fact(name, medical)]));
  return rows.filter(
    (row, i) => rows.findIndex((other) => other.label === row.label && other.value === row.value) === i,
  );
}
