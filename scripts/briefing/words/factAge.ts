/**
 * Whether a fact was checked more than 12 months before a day. Checked on the same calendar day a year before is not
 * old; 29 February counts as 1 March in a common year.
 */
export function isOldFact(checkedOn: string, onDate: string): boolean {
  const nextYear = `${Number(checkedOn.slice(0, 4)) + 1}${checkedOn.slice(4)}`;
  return nextYear.replace(/(\d{4})-02-29$/, "$1-03-01") < onDate;
}
