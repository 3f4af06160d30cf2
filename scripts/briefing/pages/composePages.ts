import type { SharedData } from "../../content/areaContent.ts";
import { type AlmanacMonthSheet, type AlmanacSheet, almanacSheets } from "./almanacSheets.ts";
import { areaFrame } from "./areaFrame.ts";
import { type AreaSheet, areaSheet } from "./areaSheet.ts";
import { type EmergencySheet, emergencySheet } from "./emergency/emergencySheet.ts";
import { type IndexSheet, indexSheet } from "./indexSheet.ts";
import { type MethodSheet, methodSheet } from "./methodSheet.ts";
import { type PartnerSheet, partnerSheet } from "./partner/partnerSheet.ts";
import { type SafetySheet, safetySheet } from "./safety/safetySheet.ts";
import type { AreaPack, PageOptions } from "./sheetParts.ts";
import { type SiteCardSheet, siteCardSheets } from "./siteCardSheet.ts";
import { type SlopeAirSheet, slopeAirSheets } from "./slopeAirSheet.ts";
import { type DaySheet, daySheets } from "./trips/daySheet.ts";
import { type IntentionsSheet, intentionsSheets } from "./trips/intentionsSheet.ts";
import { packedTrips } from "./trips/packedTrips.ts";
import { type WindTableSheet, windTableSheets } from "./windTableSheet.ts";

/** The pages of a pack by kind, in reading order; charts are still values, drawing turns them into pictures. */
export type PackPages = {
  index: IndexSheet[];
  area: AreaSheet[];
  windTable: WindTableSheet[];
  slopeAir: SlopeAirSheet[];
  siteCard: SiteCardSheet[];
  day: DaySheet[];
  intentions: IntentionsSheet[];
  safety: SafetySheet[];
  partner: PartnerSheet[];
  almanac: AlmanacSheet[];
  almanacMonth: AlmanacMonthSheet[];
  method: MethodSheet[];
  emergency: EmergencySheet[];
};

/**
 * Every page of a pack as finished words and figures: picked, rounded and worded, nothing computed.
 *
 * @throws {RangeError} when there is no area, or the model lacks a constant that pages print
 */
export function composePages(packs: AreaPack[], shared: SharedData, options: PageOptions): PackPages {
  const frames = packs.map((area) => areaFrame(area, shared, options));
  const almanacs = frames.map(almanacSheets);
  return {
    index: [indexSheet(packs, shared, options)],
    area: frames.map((frame) => areaSheet(frame, shared)),
    windTable: frames.flatMap((frame) => windTableSheets(frame, shared)),
    slopeAir: frames.flatMap((frame) => slopeAirSheets(frame, shared)),
    siteCard: frames.flatMap((frame) => siteCardSheets(frame, shared)),
    day: frames.flatMap((frame) => daySheets(frame, packedTrips(frame.area), shared)),
    intentions: frames.flatMap((frame) => intentionsSheets(frame, packedTrips(frame.area), shared)),
    safety: frames.map((frame) => safetySheet(frame, shared)),
    partner: frames.map((frame) => partnerSheet(frame, packedTrips(frame.area), shared)),
    almanac: almanacs.map((sheets) => sheets.almanac),
    almanacMonth: almanacs.flatMap((sheets) => sheets.months),
    method: frames.map((frame) => methodSheet(frame, shared)),
    emergency: frames.map((frame) => emergencySheet(frame, shared)),
  };
}
