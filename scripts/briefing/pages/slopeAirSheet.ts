import type { SharedData } from "../../content/areaContent.ts";
import type { PackSite } from "../../content/schema/packSchema.ts";
import { dateText, dayMonthText } from "../words/dateText.ts";
import { airSpansOn } from "./airSpans.ts";
import { type AreaFrame, areaSheetBase } from "./areaFrame.ts";
import type { AirSpan, MonthStripsChart } from "./charts.ts";
import { lightEvents, packDay } from "./dayLight.ts";
import { modelNumber } from "./modelNumber.ts";
import type { AreaPack, Sheet } from "./sheetParts.ts";
import { airSentence, turnRows } from "./turnWords.ts";

/** The air of a date: its two turns, or the whole day in words where it does not turn just twice. */
export interface SlopeAirRow {
  date: string;
  framed: boolean;
  turns: { rising: string; falling: string } | null;
  words: string;
  doubtful: boolean;
}

/** One site through the year. */
export interface SlopeAirSite {
  id: string;
  number: number;
  name: string;
  href: string;
  trust: string;
  chart: MonthStripsChart | null;
  /** why there is none, else null */
  noAir: string | null;
  /** the same figures as two halves that stand side by side */
  halves: SlopeAirRow[][];
}

/** When does the air turn here, through the season? */
export interface SlopeAirSheet extends Sheet {
  sites: SlopeAirSite[];
  tableDate: string;
}

const TRUST: Readonly<Record<string, string>> = {
  trusted: "The ground data show the slope well.",
  coarse: "The ground data are coarse: benches and gullies are not in them.",
  "too coarse": "The ground data are too coarse for a slope of this site.",
  owner: "Slope and facing as the owner measured them; a flat skyline is taken.",
  none: "No ground data.",
};

/** The slope-air months of an area; an edition without sites has none. */
export function slopeAirSheets(frame: AreaFrame, shared: SharedData): SlopeAirSheet[] {
  const { area } = frame;
  const { pack } = area;
  if (pack.sites === null || pack.sites.length === 0) return [];
  const stepMin = modelNumber(shared.model, "turnPrintMin");
  const sites = pack.sites.map((site) => slopeAirSite(frame, site, stepMin));
  const tableDate = dateText(pack.tableDate, pack.area.locale);
  return [
    {
      ...areaSheetBase(frame, {
        permalink: `${frame.folder}slope-air.html`,
        pageName: "Slope air",
        title: "Slope air through the year",
        answer: {
          core: firstAnswer(area, sites, tableDate),
          rest: "Clear sky and little wind; the other sites are below.",
        },
        exception: "Not if cloud is thick or wind is fresh: then the general wind decides.",
        cautions: [],
      }),
      sites,
      tableDate,
    },
  ];
}

function slopeAirSite(frame: AreaFrame, site: PackSite, stepMin: number): SlopeAirSite {
  const { area } = frame;
  const { pack, details } = area;
  const { timezone, locale } = pack.area;
  const siteDetails = details.sites?.find((s) => s.id === site.id);
  const doubtful = new Set(siteDetails?.doubtfulTurns.map((turn) => turn.localDate));
  const dates = yearDates(area, site);
  const rows = dates.flatMap((localDate) => {
    const air = airSpansOn(site, localDate);
    return air === null ? [] : [{ localDate, air, framed: localDate === pack.tableDate }];
  });
  return {
    id: `site-${site.number}`,
    number: site.number,
    name: site.name,
    href: `sites/${site.id}.html`,
    trust: TRUST[siteDetails?.groundTrust ?? "none"] ?? "Ground data not known.",
    noAir: rows.length === 0 ? (site.why.phases ?? "The slope air was not worked out.") : null,
    chart:
      rows.length === 0
        ? null
        : {
            kind: "monthStrips",
            id: `year-${site.number}`,
            title: `Turns of the slope air, site ${site.number}, ${pack.year}`,
            desc: "A row a half month. Hatched: the air turns, earliest to latest. The table below has every figure.",
            timezone,
            wideMm: frame.frameWidthMm,
            rows: rows.map((row) => {
              const day = packDay(area, row.localDate);
              const light = day === undefined ? null : lightEvents(day);
              return {
                label: dayMonthText(row.localDate, locale),
                localDate: row.localDate,
                framed: row.framed,
                sunrise: light?.sunrise ?? null,
                sunset: light?.sunset ?? null,
                air: row.air,
              };
            }),
          },
    halves: halves(
      rows.map((row) => ({
        date: dayMonthText(row.localDate, locale),
        framed: row.framed,
        turns: twoTurns(row.air, stepMin, timezone),
        words: airSentence(row.air, stepMin, timezone),
        doubtful: doubtful.has(row.localDate),
      })),
    ),
  };
}

/** The turns of an ordinary day, falling to rising and rising to falling; null on any other day. */
function twoTurns(
  air: readonly AirSpan[],
  stepMin: number,
  timezone: string,
): { rising: string; falling: string } | null {
  const ordinary = ["falling", "turning", "rising", "turning", "falling"];
  if (air.length !== 5 || air.some((span, i) => span.phase !== ordinary[i])) return null;
  const [rising, falling] = turnRows(air, stepMin, timezone);
  return rising === undefined || falling === undefined
    ? null
    : { rising: rising.span, falling: falling.span };
}

function halves<T>(rows: T[]): T[][] {
  const middle = Math.ceil(rows.length / 2);
  return rows.length < 2 ? [rows] : [rows.slice(0, middle), rows.slice(middle)];
}

/** The 1st and 16th of each month and the table date; trip days are left to their day sheets, since they hold forecast cloud. */
function yearDates(area: AreaPack, site: PackSite): string[] {
  const { tableDate, year } = area.pack;
  return (site.phases ?? [])
    .map((day) => day.localDate)
    .filter((date) => date === tableDate || (date.startsWith(`${year}-`) && /-(01|16)$/.test(date)));
}

function firstAnswer(area: AreaPack, sites: SlopeAirSite[], tableDate: string): string {
  const first = sites.find((site) => site.chart !== null);
  const row = first?.halves.flat().find((r) => r.framed);
  if (first === undefined || row === undefined) {
    return `The slope air was not worked out for ${area.pack.area.name}.`;
  }
  return `${tableDate}, site ${first.number}: ${row.words}.`;
}
