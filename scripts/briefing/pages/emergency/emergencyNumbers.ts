import { decimalDegreesText, degreesMinutesText } from "../../../geo/coordinateText.ts";
import { distanceAndBearing } from "../../../geo/geodesic.ts";
import { gridText } from "../../../geo/mgrs.ts";
import type { Position } from "../../../geo/position.ts";
import { rangeText } from "../../words/measureText.ts";
import { checkText } from "../checkText.ts";
import { featurePosition } from "../featurePosition.ts";
import { type PenRow, penRow } from "../penRow.ts";
import type { AreaPack } from "../sheetParts.ts";

/** Whom to call. Only what the owner wrote; there is no default number, and a blank stays a blank. */
export function numberRows(area: AreaPack): PenRow[] {
  const { emergency } = area.content.facts;
  const { officer } = emergency;
  const contacts = area.pack.edition === "owner" ? (emergency.contacts ?? []) : [];
  return [
    penRow("Police", null),
    penRow("Rescue centre", null),
    penRow("Poison line", null),
    penRow("Hospital", emergency.nearestHospital),
    penRow("Land manager", null),
    penRow("Officer", officer === undefined ? null : `${officer.name}, ${officer.phone}`),
    ...contacts.map((contact) =>
      penRow(
        contact.role ?? "Contact",
        [contact.name, contact.phone].filter((part) => part !== undefined).join(", "),
      ),
    ),
  ];
}

/** Where a call gets through. */
export function callingRows(area: AreaPack): PenRow[] {
  const { coverage, radio } = area.content.facts.emergency;
  return [penRow("Phone works", coverage), penRow("Radio", radio), penRow("Beacon or satellite", null)];
}

/** Where help comes in by road. */
export function accessRows(area: AreaPack): PenRow[] {
  const { emergency, parkings, camps } = area.content.facts;
  const at = emergency.nearestRoadAccess;
  const name =
    at === undefined
      ? undefined
      : [...parkings, ...camps].find(
          (place) => distanceAndBearing(at, place.position).distanceM < SAME_PLACE_M,
        )?.name;
  return [
    penRow("Road access", at === undefined ? null : [name, placeText(at)].filter(Boolean).join(": ")),
    penRow("Gate and lock", null),
    penRow("Vehicle needed", null),
  ];
}

/** The helicopter spot with what the owner said of it; what nobody looked at is NOT CHECKED. */
export function helicopterRows(area: AreaPack): PenRow[] {
  const spot = area.content.facts.emergency.helicopterSpot;
  if (spot === undefined) return [penRow("Place", null)];
  const feature = area.content.map?.features.find((f) => f.properties.id === spot.feature);
  const place = feature === undefined ? null : placeText(featurePosition(feature));
  const name = feature?.properties.name;
  return [
    penRow("Place", place === null ? null : [name, place].filter(Boolean).join(": ")),
    penRow(
      "Size",
      spot.sizeM === undefined
        ? "NOT CHECKED"
        : `${rangeText(spot.sizeM, area.pack.area.units)} across, by the owner`,
    ),
    penRow("Wires", spot.noWires === true ? "none seen by the owner" : "NOT CHECKED"),
    penRow("Slope", slopeText(area)),
    penRow("Trees, dust", "NOT CHECKED"),
    penRow("Wind from", null),
  ];
}

/** The slope as far as the elevation grid knows it; canopy it can not see. */
function slopeText(area: AreaPack): string {
  const { helicopterSpot } = area.details;
  if (helicopterSpot === null) return "NOT CHECKED";
  return `${helicopterSpot.result}: ${checkText(helicopterSpot, area)}`;
}

const SAME_PLACE_M = 30;

function placeText(position: Position): string {
  return `${decimalDegreesText(position)}; ${degreesMinutesText(position)}; ${gridText(position)}, WGS 84`;
}
