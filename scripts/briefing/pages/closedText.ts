import type { SiteDetails } from "../../content/schema/detailsSchema.ts";
import { barredSpanText } from "../words/bearingText.ts";
import { listWords } from "../words/listWords.ts";

type Shooting = SiteDetails["shooting"];

/**
 * All closed bearings of a site in one line, reasons left to the table: "Do not shoot on any bearing." or "Do not shoot 281 to 259.".
 * Null where they were not worked out, which is NOT CHECKED.
 */
export function closedLine({ closed }: Pick<Shooting, "closed">): string | null {
  if (closed === null) return null;
  if (closed.length === 0) return "No closed bearing was found on the map. Look before every shot.";
  if (isWholeCircle(closed)) return "Do not shoot on any bearing.";
  return `Do not shoot ${listWords(closed.map(({ fromDeg, toDeg }) => barredSpanText(fromDeg, toDeg)))}.`;
}

/** The other sites that close bearings while somebody sits there, as site id and span, in the order of the area; null as above. */
export function closedWhileInUse({
  whileInUse,
}: Pick<Shooting, "whileInUse">): { site: string; span: string; distanceM: number }[] | null {
  return (
    whileInUse
      ?.filter(({ kind }) => kind === "site")
      .map(({ id, fromDeg, toDeg, distanceM }) => ({
        site: id,
        span: barredSpanText(fromDeg, toDeg),
        distanceM,
      })) ?? null
  );
}

/** A full circle is written as two halves. */
function isWholeCircle(closed: NonNullable<Shooting["closed"]>): boolean {
  const [first, second] = closed;
  return closed.length === 2 && first?.fromDeg === second?.toDeg && first?.toDeg === second?.fromDeg;
}
