import type { SharedData } from "../../content/areaContent.ts";
import { type AlmanacMonthSheet, type AlmanacSheet, almanacSheets } from "./almanacSheets.ts";
import { areaFrame } from "./areaFrame.ts";
import { type AreaSheet, areaSheet } from "./areaSheet.ts";
import { type IndexSheet, indexSheet } from "./indexSheet.ts";
import { type MethodSheet, methodSheet } from "./methodSheet.ts";
import type { AreaPack, PageOptions } from "./sheetParts.ts";
import { type SiteCardSheet, siteCardSheets } from "./siteCardSheet.ts";
import { type SlopeAirSheet, slopeAirSheets } from "./slopeAirSheet.ts";
import { type WindTableSheet, windTableSheets } from "./windTableSheet.ts";

/** The pages of a pack by kind, in reading order; charts are still values, drawing turns them into pictures. */
export type PackPages = {
  index: IndexSheet[];
  area: AreaSheet[];
  windTable: WindTableSheet[];
  slopeAir: SlopeAirSheet[];
  siteCard: SiteCardSheet[];
  almanac: AlmanacSheet[];
  almanacMonth: AlmanacMonthSheet[];
  method: MethodSheet[];
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
    almanac: almanacs.map((sheets) => sheets.almanac),
    almanacMonth: almanacs.flatMap((sheets) => sheets.months),
    method: frames.map((frame) => methodSheet(frame, shared)),
  };
}
