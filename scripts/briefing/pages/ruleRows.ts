import { decimalDegreesText } from "../../geo/coordinateText.ts";
import { dateSpanText, dateText } from "../words/dateText.ts";
import { isOldFact } from "../words/factAge.ts";
import { sentenceStart } from "../words/listWords.ts";
import { rangeText } from "../words/measureText.ts";
import { asOfDate } from "./permissionRows.ts";
import { type AreaPack, type FactRow, fact } from "./sheetParts.ts";

/** A fact with its source and when a person last looked. */
export interface SourcedRow {
  label: string;
  value: string;
  source: string;
  old: boolean;
}

/** Seasons, set-backs and the other rules of the area; a rule that was not entered says so. */
export function ruleRows(area: AreaPack): SourcedRow[] {
  const { facts } = area.content;
  const { locale, units } = area.pack.area;
  const row = (label: string, value: string, from: { source: string; checkedOn: string }): SourcedRow => ({
    label,
    value,
    source: `${from.source}, checked ${dateText(from.checkedOn, locale)}`,
    old: isOldFact(from.checkedOn, asOfDate(area)),
  });
  const missing = (label: string): SourcedRow => ({
    label,
    value: "NOT CONFIRMED",
    source: "not entered",
    old: false,
  });
  const standDates = [
    facts.standRules?.from === undefined ? [] : `from ${dateText(facts.standRules.from, locale)}`,
    facts.standRules?.removeBy === undefined
      ? []
      : `remove by ${dateText(facts.standRules.removeBy, locale)}`,
    facts.standRules?.labelRequired === true ? "label required" : [],
  ].flat();
  return [
    ...(facts.season.length === 0
      ? [missing("Season")]
      : facts.season.map((season) =>
          row(
            `Season, ${season.species}`,
            `${dateSpanText(season.from, season.to, locale)}, ${season.method}, ${season.land} land`,
            season,
          ),
        )),
    ...facts.setbacks.map((setback) =>
      row(
        `Set-back, ${setback.featureKind}`,
        `${rangeText(setback.distanceM, units)} for ${setback.weaponClass}, written as ${setback.asWritten}; ${setback.waiver === "none" ? "no waiver" : `${setback.waiver} waiver`}. A bullet does not stop there.`,
        setback,
      ),
    ),
    facts.followUpRule === undefined
      ? missing("Following up")
      : row("Following up", facts.followUpRule.text, facts.followUpRule),
    facts.colourRule === undefined
      ? missing("Bright colour")
      : row("Bright colour", facts.colourRule.text, facts.colourRule),
    facts.standRules === undefined
      ? missing("Stands")
      : row(
          "Stands",
          standDates.length === 0
            ? facts.standRules.text
            : `${facts.standRules.text} ${sentenceStart(standDates.join(", "))}.`,
          facts.standRules,
        ),
  ];
}

/** What to call and where help can come; nothing has a default, so what is not entered is null: a blank for the pen. */
export function emergencyRows(area: AreaPack): { label: string; value: string | null }[] {
  const { emergency } = area.content.facts;
  const spot = emergency.helicopterSpot;
  const spotName = area.content.map?.features.find((f) => f.properties.id === spot?.feature)?.properties;
  const rows: { label: string; value: string | null }[] = [
    { label: "Number to call", value: emergency.number ?? null },
    { label: "Hospital", value: emergency.nearestHospital ?? null },
    {
      label: "Road access",
      value:
        emergency.nearestRoadAccess === undefined ? null : decimalDegreesText(emergency.nearestRoadAccess),
    },
    {
      label: "Helicopter spot",
      value:
        spot === undefined
          ? null
          : [
              spotName?.name ?? "marked on the map",
              spot.sizeM === undefined ? "size not known" : rangeText(spot.sizeM, area.pack.area.units),
              spot.noWires === true ? "no wires seen" : "wires NOT CHECKED",
            ].join(", "),
    },
    { label: "Radio", value: emergency.radio ?? null },
    { label: "Phone coverage", value: emergency.coverage ?? null },
  ];
  if (emergency.officer !== undefined) {
    rows.push({ label: "Officer", value: `${emergency.officer.name}, ${emergency.officer.phone}` });
  }
  if (area.pack.edition === "owner") {
    for (const contact of emergency.contacts ?? []) {
      rows.push({
        label: sentenceStart(contact.role ?? "contact"),
        value: [contact.name, contact.phone].filter(Boolean).join(", "),
      });
    }
  }
  return rows;
}

/** Camps and parkings with their places. */
export function baseRows(area: AreaPack): FactRow[] {
  const { camps, parkings } = area.content.facts;
  return [
    ...camps.map((p) => ({ ...p, kind: "Camp" })),
    ...parkings.map((p) => ({ ...p, kind: "Parking" })),
  ].map((place) =>
    fact(
      `${place.kind}: ${place.name}`,
      `${decimalDegreesText(place.position)}${place.places === undefined ? "" : `, ${place.places} places`}`,
    ),
  );
}
