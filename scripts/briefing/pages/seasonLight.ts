import type { PackDay } from "../../content/schema/packSchema.ts";
import { addDays, daysBetween } from "../../time/civilTime.ts";
import { dateText, dayMonthText, weekdayName } from "../words/dateText.ts";
import { hoursMinutesText } from "../words/durationText.ts";
import { eventCell, packDay } from "./dayLight.ts";
import { legalCell } from "./legalText.ts";
import type { AreaPack } from "./sheetParts.ts";

export interface SeasonLightRow {
  date: string;
  firstLight: string;
  sunrise: string;
  sunset: string;
  lastLight: string;
  dayLength: string;
  legal: { window: string; struck: boolean; mark: string | null };
  clockChange: boolean;
}

/**
 * Light through the season: its first and last day, every seventh between, and the days on which the clocks change; at
 * most 20 weeks around the table date. Days outside the year of the pack are left out.
 */
export function seasonLightRows(area: AreaPack): SeasonLightRow[] {
  return seasonDates(area).flatMap((date) => {
    const day = packDay(area, date);
    return day === undefined ? [] : [rowOf(area, day)];
  });
}

/** The season that holds the table date, else the first; null when none was entered. */
export function mainSeason(area: AreaPack): { from: string; to: string } | null {
  const { season } = area.content.facts;
  const { tableDate } = area.pack;
  return season.find((s) => s.from <= tableDate && tableDate <= s.to) ?? season[0] ?? null;
}

function seasonDates(area: AreaPack): string[] {
  const season = mainSeason(area);
  const { tableDate } = area.pack;
  const wholeFrom = season?.from ?? addDays(tableDate, -35);
  const wholeTo = season?.to ?? addDays(tableDate, 35);
  const long = daysBetween(wholeFrom, wholeTo) > 140;
  const from = long ? later(wholeFrom, addDays(tableDate, -70)) : wholeFrom;
  const to = long ? earlier(wholeTo, addDays(tableDate, 70)) : wholeTo;
  const weeks = Array.from({ length: Math.floor(daysBetween(from, to) / 7) + 1 }, (_, n) =>
    addDays(from, 7 * n),
  );
  const changes = area.pack.days
    .filter((day) => day.clockChangeAt !== null && from <= day.localDate && day.localDate <= to)
    .map((day) => day.localDate);
  return [...new Set([...weeks, ...changes, to])].sort();
}

function rowOf(area: AreaPack, day: PackDay): SeasonLightRow {
  const { timezone, locale } = area.pack.area;
  return {
    date: `${weekdayName(day.localDate).slice(0, 3)} ${dayMonthText(day.localDate, locale)}`,
    firstLight: eventCell(area, day, "firstLight"),
    sunrise: eventCell(area, day, "sunrise"),
    sunset: eventCell(area, day, "sunset"),
    lastLight: eventCell(area, day, "lastLight"),
    dayLength: day.dayLengthMin === null ? "none" : hoursMinutesText(day.dayLengthMin),
    legal: legalCell(day.shootingLight, timezone),
    clockChange: day.clockChangeAt !== null,
  };
}

/** Caption of the season's light: which days, and of which season. */
export function seasonCaption(area: AreaPack): string {
  const season = mainSeason(area);
  const { locale } = area.pack.area;
  return season === null
    ? `Light around ${dateText(area.pack.tableDate, locale)}; no season was entered`
    : `Light in the season ${dateText(season.from, locale)} to ${dateText(season.to, locale)}`;
}

function later(a: string, b: string): string {
  return a > b ? a : b;
}

function earlier(a: string, b: string): string {
  return a < b ? a : b;
}
