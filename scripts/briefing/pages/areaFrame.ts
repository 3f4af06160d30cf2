import type { SharedData } from "../../content/areaContent.ts";
import { civilAt } from "../../time/civilTime.ts";
import { dateText } from "../words/dateText.ts";
import { sentenceStart } from "../words/listWords.ts";
import {
  type AreaPack,
  type PageLink,
  type PageOptions,
  rootOf,
  type Sheet,
  type SheetFoot,
} from "./sheetParts.ts";
import { standingLine } from "./standingLines.ts";
import { packedTrips, tripPermalinks } from "./trips/packedTrips.ts";

/** What the sheets of one area share, made once. */
export interface AreaFrame {
  area: AreaPack;
  paper: Sheet["paper"];
  /** width of the printed frame, millimetres */
  frameWidthMm: number;
  /** folder of the area in the output tree, with a closing slash */
  folder: string;
  /** every page of the area in reading order, permalinks */
  order: string[];
  menu: { permalink: string; text: string }[];
  /** the sentence of a demonstration area */
  demonstration: string;
}

/** What is particular to one sheet. */
export type SheetWords = Pick<Sheet, "permalink" | "title" | "answer" | "exception" | "cautions"> & {
  pageName: string;
};

/**
 * The frame of an area: its pages in order, its paper, its menu. Site cards and trip pages are left out where the edition has
 * none; the emergency page is always the last sheet, the back of a stapled pack.
 */
export function areaFrame(area: AreaPack, shared: SharedData, options: PageOptions): AreaFrame {
  const folder = `areas/${area.pack.area.id}/`;
  const hasSites = area.pack.sites !== null && area.pack.sites.length > 0;
  const siteMenu = hasSites
    ? [
        { permalink: `${folder}wind-table.html`, text: "Wind table" },
        { permalink: `${folder}slope-air.html`, text: "Slope air" },
      ]
    : [];
  const cards = (area.pack.sites ?? []).map((site) => `${folder}sites/${site.id}.html`);
  const months = Array.from(
    { length: 12 },
    (_, m) => `${folder}almanac-${String(m + 1).padStart(2, "0")}.html`,
  );
  const areaPage = { permalink: `${folder}index.html`, text: "Area" };
  const almanac = { permalink: `${folder}almanac.html`, text: "Almanac" };
  const method = { permalink: `${folder}method.html`, text: "Key and method" };
  const safety = { permalink: `${folder}safety.html`, text: "Safety" };
  const partner = { permalink: `${folder}partner.html`, text: "Partner briefing" };
  const emergency = { permalink: `${folder}emergency.html`, text: "Emergency" };
  const trips = packedTrips(area).flatMap(({ trip }) => {
    const { days, intentions } = tripPermalinks(folder, trip);
    return [...days, intentions];
  });
  // the days of all trips stand on the area page
  const dayMenu = trips.length === 0 ? [] : [{ permalink: `${folder}index.html#trips`, text: "Day sheets" }];
  const paper = paperOf(area, options);
  return {
    area,
    paper,
    frameWidthMm: paper === "a5" ? 126 : 180,
    folder,
    order: [
      areaPage.permalink,
      ...siteMenu.map((entry) => entry.permalink),
      ...cards,
      ...trips,
      safety.permalink,
      partner.permalink,
      almanac.permalink,
      ...months,
      method.permalink,
      emergency.permalink,
    ],
    menu: [areaPage, emergency, ...dayMenu, ...siteMenu, safety, partner, almanac, method],
    demonstration: standingLine(shared, "demonstration"),
  };
}

/** One sheet of an area with all that every sheet carries. */
export function areaSheetBase(frame: AreaFrame, words: SheetWords): Sheet {
  const { pack, content } = frame.area;
  const root = rootOf(words.permalink);
  const notAfter = dateText(pack.notValidAfter, pack.area.locale);
  return {
    permalink: words.permalink,
    root,
    lang: pack.area.locale,
    paper: frame.paper,
    documentTitle: `${words.title}, ${pack.area.name}`,
    running: { area: pack.area.name, page: words.pageName, dates: `Not valid after ${notAfter}` },
    nav: menuFor(frame, words.permalink, root),
    demonstration: content.facts.demonstration === true ? frame.demonstration : null,
    title: words.title,
    answer: words.answer,
    exception: words.exception,
    cautions: words.cautions,
    foot: footOf(frame.area, `Page ${frame.order.indexOf(words.permalink) + 1} of ${frame.order.length}`),
  };
}

/** Foot of a sheet: place in the pack, which pack, for whom, until when. */
export function footOf(area: AreaPack, page: string): SheetFoot {
  const { pack } = area;
  const built = civilAt(new Date(pack.builtAt), pack.area.timezone);
  return {
    page,
    pack: `Pack built ${dateText(built.localDate, pack.area.locale)} ${built.clock}, ${pack.generator}`,
    edition: `${sentenceStart(pack.edition)} edition`,
    notValidAfter: `Not valid after ${dateText(pack.notValidAfter, pack.area.locale)}`,
  };
}

/** The paper of a page option or an area: its own, else Letter for us units, else A4. */
export function paperOf(area: AreaPack, options: PageOptions): Sheet["paper"] {
  const { facts } = area.content;
  const paper = options.paper ?? facts.paper ?? (facts.units === "us" ? "Letter" : "A4");
  return paper === "A4" ? "a4" : paper === "A5" ? "a5" : "letter";
}

function menuFor(frame: AreaFrame, permalink: string, root: string): PageLink[] {
  const entries = [{ permalink: "index.html", text: "All areas" }, ...frame.menu];
  return entries
    .filter((entry) => entry.permalink !== permalink)
    .map((entry) => ({ href: `${root}${entry.permalink}`, text: entry.text }));
}
