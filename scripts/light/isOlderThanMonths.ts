/**
 * Whether a date lies more than a number of calendar months before another. The same day of the month is not yet older;
 * where that month is shorter, its last day is the limit.
 *
 * @example isOlderThanMonths("2026-02-20", "2027-02-20", 12) // false, the next day true
 */
export function isOlderThanMonths(date: string, onDate: string, months: number): boolean {
  const [year = 0, month = 0] = date.split("-").map(Number);
  const later = year * 12 + (month - 1) + months;
  const pad = (value: number, digits: number) => String(value).padStart(digits, "0");
  const limit = `${pad(Math.floor(later / 12), 4)}-${pad((later % 12) + 1, 2)}${date.slice(7)}`;
  return onDate > limit;
}
