import { weekday } from "../../time/civilTime.ts";

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

const WEEKDAYS = {
  mon: "Monday",
  tue: "Tuesday",
  wed: "Wednesday",
  thu: "Thursday",
  fri: "Friday",
  sat: "Saturday",
  sun: "Sunday",
} as const;

/** Whether the locale writes the month before the day. */
function monthFirst(locale: string): boolean {
  return locale === "en-US" || locale === "en-CA";
}

/** Name of a month, 1 to 12. */
export function monthName(month: number): string {
  const name = MONTHS[month - 1];
  if (name === undefined) throw new RangeError(`month must be 1 to 12, found ${month}`);
  return name;
}

/** "14 Oct 2027", in the order of the locale: "Oct 14, 2027". */
export function dateText(localDate: string, locale: string): string {
  const { year, month, day } = partsOf(localDate);
  const short = monthName(month).slice(0, 3);
  return monthFirst(locale) ? `${short} ${day}, ${year}` : `${day} ${short} ${year}`;
}

/** "14 Oct" or "Oct 14". */
export function dayMonthText(localDate: string, locale: string): string {
  const { month, day } = partsOf(localDate);
  const short = monthName(month).slice(0, 3);
  return monthFirst(locale) ? `${short} ${day}` : `${day} ${short}`;
}

/** "1 Oct to 15 Nov 2027"; the year of the first date is dropped when both have the same. */
export function dateSpanText(from: string, to: string, locale: string): string {
  if (from === to) return dateText(from, locale);
  const first = from.slice(0, 4) === to.slice(0, 4) ? dayMonthText(from, locale) : dateText(from, locale);
  return `${first} to ${dateText(to, locale)}`;
}

/** "Wednesday". */
export function weekdayName(localDate: string): string {
  return WEEKDAYS[weekday(localDate)];
}

function partsOf(localDate: string): { year: number; month: number; day: number } {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(localDate) ?? [];
  if (year === undefined) {
    throw new RangeError(`localDate must be YYYY-MM-DD, found ${JSON.stringify(localDate)}`);
  }
  return { year: Number(year), month: Number(month), day: Number(day) };
}
