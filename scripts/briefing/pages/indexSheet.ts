import type { SharedData } from "../../content/areaContent.ts";
import { dateSpanText, dateText } from "../words/dateText.ts";
import { countText, listWords } from "../words/listWords.ts";
import { footOf, paperOf } from "./areaFrame.ts";
import { barredSites } from "./barredSites.ts";
import { oldFacts } from "./oldFacts.ts";
import { asOfDate, permissionRows } from "./permissionRows.ts";
import type { AreaPack, PageOptions, Sheet } from "./sheetParts.ts";
import { standingLine } from "./standingLines.ts";
import { tripLinks } from "./trips/tripLinks.ts";

export interface IndexArea {
  name: string;
  href: string;
  summary: string;
  demonstration: boolean;
  trips: { name: string; dates: string }[];
  tableDate: string;
  asOf: string;
  notValidAfter: string;
  sites: string;
  old: string[];
  lapsed: string[];
  barred: { number: number; name: string; reason: string }[];
  links: { href: string; text: string }[];
}

/** Is this the right pack and is it current? */
export interface IndexSheet extends Sheet {
  areas: IndexArea[];
}

/**
 * The cover of the pack.
 *
 * @throws {RangeError} when there is no area
 */
export function indexSheet(packs: readonly AreaPack[], shared: SharedData, options: PageOptions): IndexSheet {
  const [first] = packs;
  if (first === undefined) throw new RangeError("a pack needs at least one area, found none");
  const names = packs.map((area) => area.pack.area.name);
  const earliest = packs.map((area) => area.pack.notValidAfter).sort()[0]!;
  const notAfter = dateText(earliest, first.pack.area.locale);
  const areas = packs.map((area) => indexArea(area));
  const stale = areas.filter((area) => area.old.length + area.lapsed.length > 0);
  return {
    permalink: "index.html",
    root: "",
    lang: first.pack.area.locale,
    paper: paperOf(first, options),
    documentTitle: `Briefing pack, ${names.join(", ")}`,
    running: { area: listWords(names), page: "Cover", dates: `Not valid after ${notAfter}` },
    nav: [],
    demonstration: packs.some((area) => area.content.facts.demonstration === true)
      ? standingLine(shared, "demonstration")
      : null,
    title: "Briefing pack",
    answer: { core: `${listWords(names)}.`, rest: `Not valid after ${notAfter}.` },
    exception:
      stale.length === 0
        ? null
        : `Out of date: ${stale.map((area) => `${area.name}, ${countText(area.old.length + area.lapsed.length, "fact")}`).join("; ")}.`,
    cautions: [],
    foot: footOf(first, "Cover"),
    areas,
  };
}

function indexArea(area: AreaPack): IndexArea {
  const { pack, content } = area;
  const { locale } = pack.area;
  const folder = `areas/${pack.area.id}/`;
  const hasSites = pack.sites !== null && pack.sites.length > 0;
  const links = [
    { href: `${folder}index.html`, text: "Area" },
    ...(hasSites
      ? [
          { href: `${folder}wind-table.html`, text: "Wind table" },
          { href: `${folder}slope-air.html`, text: "Slope air" },
        ]
      : []),
    ...tripLinks(area).flatMap((trip) =>
      trip.links.map((link) => ({ href: `${folder}${link.href}`, text: `${trip.name}, ${link.text}` })),
    ),
    { href: `${folder}safety.html`, text: "Safety and checklists" },
    { href: `${folder}partner.html`, text: "Partner briefing" },
    { href: `${folder}almanac.html`, text: "Almanac" },
    { href: `${folder}method.html`, text: "Key and method" },
    { href: `${folder}emergency.html`, text: "Emergency" },
  ];
  return {
    name: pack.area.name,
    href: `${folder}index.html`,
    summary: content.facts.summary,
    demonstration: content.facts.demonstration === true,
    trips: content.trips.map((trip) => ({
      name: trip.facts.name,
      dates: dateSpanText(trip.facts.from, trip.facts.to, locale),
    })),
    tableDate: dateText(pack.tableDate, locale),
    asOf: dateText(asOfDate(area), locale),
    notValidAfter: dateText(pack.notValidAfter, locale),
    sites: pack.sites === null ? "not in this edition" : countText(pack.sites.length, "site"),
    old: oldFacts(area),
    lapsed: permissionRows(area).flatMap((row) => (row.ask === null ? [] : [`${row.where}: ${row.ask}`])),
    barred: barredSites(area),
    links,
  };
}
