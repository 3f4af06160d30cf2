import type { Prose, SharedData } from "../../content/areaContent.ts";
import { decimalDegreesText } from "../../geo/coordinateText.ts";
import { orderChecks } from "../../safety/orderChecks.ts";
import { compassSentence } from "../words/bearingText.ts";
import { clockText, instantOf } from "../words/clockText.ts";
import { dateSpanText, dateText } from "../words/dateText.ts";
import { heightText } from "../words/measureText.ts";
import { type AreaFrame, areaSheetBase } from "./areaFrame.ts";
import { subjectName } from "./checkRows.ts";
import { checkTitle } from "./checkTitle.ts";
import { type CoverageRow, coverageRows } from "./coverageRows.ts";
import { packDay } from "./dayLight.ts";
import { gapLines } from "./gapLines.ts";
import { legalSource } from "./legalText.ts";
import { oldFacts } from "./oldFacts.ts";
import { type PermissionRow, permissionRows } from "./permissionRows.ts";
import { baseRows, emergencyRows, ruleRows, type SourcedRow } from "./ruleRows.ts";
import { mainSeason, type SeasonLightRow, seasonCaption, seasonLightRows } from "./seasonLight.ts";
import { type AreaPack, type CautionBox, type FactRow, fact, type Sheet } from "./sheetParts.ts";
import { siteBar } from "./siteBar.ts";
import { type TripLinks, tripLinks } from "./trips/tripLinks.ts";

export interface SiteListRow {
  number: number;
  name: string;
  href: string;
  block: string;
  overlooks: string;
  /** why nobody may sit there, else null */
  barred: string | null;
}

/** What is this place and may I be here? */
export interface AreaSheet extends Sheet {
  summary: string;
  permissions: PermissionRow[];
  rules: SourcedRow[];
  old: string[];
  bases: FactRow[];
  hazards: { name: string; where: string; season: string; advice: string }[];
  emergency: { label: string; value: string | null }[];
  sites: SiteListRow[];
  coverage: CoverageRow[];
  gaps: string[];
  seasonCaption: string;
  seasonLight: SeasonLightRow[];
  legalSource: string;
  trips: TripLinks[];
  place: FactRow[];
  notChecked: { title: string; subject: string; text: string }[];
  prose: Prose["sections"];
}

export function areaSheet(frame: AreaFrame, shared: SharedData): AreaSheet {
  const { area } = frame;
  const { pack, content } = area;
  const old = oldFacts(area);
  const permissions = permissionRows(area);
  const day = packDay(area, pack.tableDate);
  return {
    ...areaSheetBase(frame, {
      permalink: `${frame.folder}index.html`,
      pageName: "Area",
      title: pack.area.name,
      answer: answerOf(area, permissions),
      exception: exceptionOf(permissions, old),
      cautions: siteCautions(area),
    }),
    summary: content.facts.summary,
    permissions,
    rules: ruleRows(area),
    old,
    bases: baseRows(area),
    hazards: content.facts.hazards.map((hazard) => ({
      name: hazard.name,
      where: hazard.where,
      season: hazard.season ?? "all year",
      advice: hazard.advice,
    })),
    emergency: emergencyRows(area),
    sites: siteList(frame),
    coverage: coverageRows(area),
    gaps: pack.coverage === null ? [] : gapLines(area),
    seasonCaption: seasonCaption(area),
    seasonLight: seasonLightRows(area),
    legalSource:
      day === undefined
        ? "No light was worked out for the table date."
        : legalSource(day.shootingLight, area),
    trips: tripLinks(area),
    place: placeRows(area),
    notChecked: orderChecks(
      pack.notChecked.map((item) => ({ ...item, id: item.check, result: "NOT CHECKED" as const })),
    ).map((item) => ({
      title: checkTitle(item.check),
      subject: subjectName(item.subject, area, shared) ?? "area",
      text: item.text,
    })),
    prose: content.prose?.sections ?? [],
  };
}

function answerOf(area: AreaPack, permissions: PermissionRow[]): { core: string; rest: string | null } {
  const season = mainSeason(area);
  const { locale } = area.pack.area;
  const holds = permissions.filter((row) => row.ask === null);
  const permission =
    permissions.length === 0
      ? "Permission NOT CONFIRMED: none entered."
      : holds.length === 0
        ? "No permission holds now."
        : `Permission: ${holds[0]!.what}, ${holds[0]!.dates}.`;
  const species = area.content.facts.season.find(
    (s) => s.from === season?.from && s.to === season.to,
  )?.species;
  return {
    core: permission,
    rest:
      season === null
        ? "Season NOT CONFIRMED: none entered."
        : `Season: ${species}, ${dateSpanText(season.from, season.to, locale)}.`,
  };
}

function exceptionOf(permissions: PermissionRow[], old: string[]): string | null {
  const lapsed = permissions.find((row) => row.ask !== null);
  if (lapsed !== undefined) return `${lapsed.where}: ${lapsed.ask}`;
  return old.length === 0
    ? null
    : `${old.length === 1 ? "One fact is" : `${old.length} facts are`} old: check before you go.`;
}

/** The worst STOP of the sites, each site once: at most two boxes. */
function siteCautions(area: AreaPack): CautionBox[] {
  return (area.pack.sites ?? [])
    .flatMap((site) => {
      const bar = siteBar(area, site);
      return bar === null
        ? []
        : [
            {
              level: "warning" as const,
              title: `Do not sit at ${site.number} ${site.name}`,
              text: `${bar.heading}: ${bar.reason}`,
            },
          ];
    })
    .slice(0, 2);
}

function siteList(frame: AreaFrame): SiteListRow[] {
  const { pack, content } = frame.area;
  return (pack.sites ?? []).map((site) => {
    const facts = content.sites.find((s) => s.id === site.id)?.facts;
    const bar = siteBar(frame.area, site);
    return {
      number: site.number,
      name: site.name,
      href: `sites/${site.id}.html`,
      block: content.facts.blocks.find((block) => block.id === site.block)?.name ?? "no block",
      overlooks: facts?.overlooksName ?? facts?.overlooks ?? "not entered",
      barred: bar === null ? null : `${bar.heading}: ${bar.reason}`,
    };
  });
}

function placeRows(area: AreaPack): FactRow[] {
  const { pack } = area;
  const { magnetic, elevationM, terrain, units, locale, timezone } = pack.area;
  return [
    fact("Centre", decimalDegreesText(pack.area.centre)),
    fact(
      "Elevation",
      elevationM === null ? (pack.area.why.elevationM ?? "not known") : heightText(elevationM, units),
    ),
    fact("Clock", `24 h, ${timezone}`),
    fact(
      "Compass",
      magnetic === null
        ? (pack.area.why.magnetic ?? "not known")
        : `${compassSentence(magnetic.declinationDeg)} ${magnetic.model}, ${dateText(magnetic.date, locale)}`,
    ),
    fact(
      "Ground data",
      terrain === null
        ? (pack.area.why.terrain ?? "none")
        : `${terrain.format}, zone ${terrain.zone}, cells ${terrain.sourceCellM} m, ${terrain.filledCells} filled, ${terrain.voidCells} empty`,
    ),
    fact(
      "As of",
      `${dateText(pack.asOf.slice(0, 10), locale)} ${clockText(instantOf(pack.asOf), timezone)}: what counts as old`,
    ),
  ];
}
