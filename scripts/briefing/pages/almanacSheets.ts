import type { PackDay } from "../../content/schema/packSchema.ts";
import { civilAt } from "../../time/civilTime.ts";
import { clockText, instantOf, utcOffsetText } from "../words/clockText.ts";
import { dateText, dayMonthText, monthName, weekdayName } from "../words/dateText.ts";
import { hoursMinutesText } from "../words/durationText.ts";
import { listWords } from "../words/listWords.ts";
import { percentText } from "../words/shareWords.ts";
import { type AreaFrame, areaSheetBase } from "./areaFrame.ts";
import { eventCell, missingEventReasons } from "./dayLight.ts";
import { legalCell, NOT_CONFIRMED } from "./legalText.ts";
import type { AreaPack, Sheet } from "./sheetParts.ts";

/** A day of the almanac as figures, its date as the day of the month; "none" is an event that does not happen. */
export interface AlmanacRow {
  date: string;
  weekday: string;
  firstLight: string;
  sunrise: string;
  sunset: string;
  lastLight: string;
  dayLength: string;
  legal: { window: string; struck: boolean; mark: string | null };
  moonLit: string;
  moonrise: string;
  moonset: string;
  /** the day starts a week: a rule stands above it */
  weekStart: boolean;
  /** "Clocks go back 03:00 to 02:00, then UTC+12", or null */
  clockChange: string | null;
}

export interface AlmanacMonthSheet extends Sheet {
  clock: string;
  rows: AlmanacRow[];
  notes: string[];
}

export interface AlmanacSheet extends Sheet {
  months: {
    href: string;
    name: string;
    days: string;
    first: { sunrise: string; sunset: string };
    last: { sunrise: string; sunset: string };
    clockChange: string;
  }[];
}

/** Almanac pages: the list of months, and one page a month with every day of the year. */
export function almanacSheets(frame: AreaFrame): { almanac: AlmanacSheet; months: AlmanacMonthSheet[] } {
  const { area } = frame;
  const { year } = area.pack;
  const all = Array.from({ length: 12 }, (_, m) => daysOfMonth(area, m + 1));
  const changes = all.flat().flatMap((day) => clockChangeText(area, day) ?? []);
  const almanac: AlmanacSheet = {
    ...areaSheetBase(frame, {
      permalink: `${frame.folder}almanac.html`,
      pageName: "Almanac",
      title: `Almanac ${year}`,
      answer: {
        core:
          changes.length === 0
            ? "The clocks do not change this year."
            : `Clocks change ${countWord(changes.length)}: ${listWords(changeDates(area, all.flat()))}.`,
        rest: null,
      },
      exception: null,
      cautions: [],
    }),
    months: all.map((days, m) => monthLine(area, days, m + 1)),
  };
  return { almanac, months: all.map((days, m) => monthSheet(frame, days, m + 1)) };
}

function daysOfMonth(area: AreaPack, month: number): PackDay[] {
  const start = `${area.pack.year}-${String(month).padStart(2, "0")}-`;
  return area.pack.days.filter((day) => day.localDate.startsWith(start));
}

function monthLine(area: AreaPack, days: PackDay[], month: number): AlmanacSheet["months"][number] {
  const ends = (day: PackDay | undefined): { sunrise: string; sunset: string } =>
    day === undefined
      ? { sunrise: "not known", sunset: "not known" }
      : { sunrise: eventCell(area, day, "sunrise"), sunset: eventCell(area, day, "sunset") };
  return {
    href: `almanac-${String(month).padStart(2, "0")}.html`,
    name: monthName(month),
    days: String(days.length),
    first: ends(days[0]),
    last: ends(days.at(-1)),
    clockChange: listWords(changeDates(area, days)) || "no change",
  };
}

function monthSheet(frame: AreaFrame, days: PackDay[], month: number): AlmanacMonthSheet {
  const { area } = frame;
  const { timezone, locale } = area.pack.area;
  const changes = days.flatMap((day) => clockChangeText(area, day) ?? []);
  const offset = days[0] === undefined ? "" : utcOffsetText(startOffset(days[0], timezone));
  const unconfirmed = days.filter((day) => day.shootingLight.status !== "confirmed").length;
  const reasons = [...new Set(days.flatMap(missingEventReasons))];
  const legalNotes = area.details.shootingNotes
    .filter((row) => days.some((day) => day.localDate === row.localDate))
    .flatMap((row) => row.notes.map((note) => ({ note, date: row.localDate })));
  return {
    ...areaSheetBase(frame, {
      permalink: `${frame.folder}almanac-${String(month).padStart(2, "0")}.html`,
      pageName: "Almanac",
      title: `${monthName(month)} ${area.pack.year}`,
      answer: {
        core: changes.length === 0 ? "No clock change this month." : `${listWords(changes)}.`,
        rest: null,
      },
      exception:
        unconfirmed === 0
          ? null
          : unconfirmed === days.length
            ? `${NOT_CONFIRMED} this month.`
            : `${NOT_CONFIRMED} on ${unconfirmed} days: those rows say so.`,
      cautions: [],
    }),
    clock: `24-hour clock, ${timezone}, ${offset}${changes.length === 0 ? "" : " at the start of the month"}. Flat horizon at the centre of the area.`,
    rows: days.map((day) => almanacRow(area, day)),
    notes: [...reasons, ...groupedNotes(legalNotes, locale)],
  };
}

function almanacRow(area: AreaPack, day: PackDay): AlmanacRow {
  const { timezone } = area.pack.area;
  const clockOrNone = (text: string | null): string =>
    text === null ? "none" : clockText(instantOf(text), timezone);
  return {
    date: String(Number(day.localDate.slice(8))),
    weekday: weekdayName(day.localDate).slice(0, 3),
    firstLight: eventCell(area, day, "firstLight"),
    sunrise: eventCell(area, day, "sunrise"),
    sunset: eventCell(area, day, "sunset"),
    lastLight: eventCell(area, day, "lastLight"),
    dayLength: day.dayLengthMin === null ? "none" : hoursMinutesText(day.dayLengthMin),
    legal: legalCell(day.shootingLight, timezone),
    moonLit: percentText(day.moon.illuminated),
    moonrise: clockOrNone(day.moon.rise),
    moonset: clockOrNone(day.moon.set),
    weekStart: weekdayName(day.localDate) === "Monday",
    clockChange: clockChangeText(area, day),
  };
}

/** "Clocks go back on 5 Apr at 03:00 to 02:00, then UTC+12"; null on an ordinary day. */
export function clockChangeText(area: AreaPack, day: PackDay): string | null {
  if (day.clockChangeAt === null) return null;
  const { timezone, locale } = area.pack.area;
  const at = instantOf(day.clockChangeAt);
  const before = civilAt(new Date(at.getTime() - 1), timezone);
  const after = civilAt(at, timezone);
  const way = after.utcOffsetMin > before.utcOffsetMin ? "forward" : "back";
  return `Clocks go ${way} on ${dayMonthText(day.localDate, locale)} at ${nextMinute(before.clock)} to ${after.clock}, then ${utcOffsetText(after.utcOffset)}`;
}

function changeDates(area: AreaPack, days: PackDay[]): string[] {
  return days.flatMap((day) =>
    day.clockChangeAt === null
      ? []
      : [`${weekdayName(day.localDate).slice(0, 3)} ${dayMonthText(day.localDate, area.pack.area.locale)}`],
  );
}

/** Offset in force at the first instant of the day: on a change day the other one than at noon. */
function startOffset(day: PackDay, timezone: string): string {
  if (day.clockChangeAt === null) return day.utcOffset;
  return civilAt(new Date(instantOf(day.clockChangeAt).getTime() - 1), timezone).utcOffset;
}

/** The clock a minute after HH:MM: the last minute before a change plus one. */
function nextMinute(clock: string): string {
  const minutes = (Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3)) + 1) % 1440;
  return hoursMinutesText(minutes).padStart(5, "0");
}

function countWord(count: number): string {
  return count === 1 ? "once" : count === 2 ? "twice" : `${count} times`;
}

function groupedNotes(notes: { note: string; date: string }[], locale: string): string[] {
  const dates = new Map<string, string[]>();
  for (const { note, date } of notes) dates.set(note, [...(dates.get(note) ?? []), date]);
  return [...dates].map(([note, on]) =>
    on.length > 4
      ? `${note} (${dateText(on[0]!, locale)} to ${dateText(on.at(-1)!, locale)}, ${on.length} days)`
      : `${note} (${listWords(on.map((date) => dayMonthText(date, locale)))})`,
  );
}
