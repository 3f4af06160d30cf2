/**
 * One of four words for how often something was seen, or the bare count when there is too little to say.
 * Nearly always is over 9 in 10, usually over 2 in 3, sometimes from 1 in 3, seldom under it.
 *
 * @param count  how often it was so
 * @param of     out of how many
 */
export function oftenText(count: number, of: number): string {
  if (of < 5) return `${count} of ${of}`;
  const share = count / of;
  if (share > 0.9) return "nearly always";
  if (share > 2 / 3) return "usually";
  return share >= 1 / 3 ? "sometimes" : "seldom";
}

/** A share in whole tenths: 0.68 gives "about 7 in 10". */
export function inTenText(share: number): string {
  return `about ${Math.round(share * 10)} in 10`;
}

/** A share in whole percent. */
export function percentText(share: number): string {
  return `${Math.round(share * 100)} %`;
}
