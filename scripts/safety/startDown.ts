import { civilAt, isoInZone } from "../time/civilTime.ts";
import { type Check, combined, figure } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

/** When to start down: the end of legal light or the hunter's own limit, the earlier, less a margin; null without either. */
export function startDownAt(legalEnd: Date | null, ownLimit: Date | null, marginMin: number): Date | null {
  const ends = [legalEnd, ownLimit].filter((end) => end !== null).map((end) => end.getTime());
  return ends.length === 0 ? null : new Date(Math.min(...ends) - marginMin * 60_000);
}

/**
 * C14: the time to start down and how much of the walk-out is dark. Over the limit in the dark is a CAUTION. Without the
 * end of legal light nothing is checked, whatever the hunter's own limit.
 */
export function startDown(
  facts: {
    subject: string;
    timezone: string;
    legalEnd: Date | null;
    ownLimit: Date | null;
    marginMin: number;
    walkOutMin: number | null;
    darkOutMin: number | null;
  },
  limits: Pick<SafetyLimits, "walkOutDarkCautionMin">,
): Check {
  const { subject, timezone, legalEnd, ownLimit, marginMin, walkOutMin, darkOutMin } = facts;
  const down = startDownAt(legalEnd, ownLimit, marginMin);
  const result = combined([
    legalEnd === null || walkOutMin === null || darkOutMin === null ? "NOT CHECKED" : "OK",
    (darkOutMin ?? 0) > limits.walkOutDarkCautionMin ? "CAUTION" : "OK",
  ]);
  const iso = (at: Date | null) => (at === null ? null : isoInZone(at, timezone));
  const start =
    down === null ? "Start-down time not known" : `Start down by ${civilAt(down, timezone).clock}`;
  const legal = legalEnd === null ? "; legal hours not confirmed" : "";
  const walk = walkOutMin === null ? "walk-out not known" : `walk-out ${figure(walkOutMin)} min`;
  const dark = darkOutMin === null ? "dark minutes not known" : `${figure(darkOutMin)} of it dark`;
  return {
    id: "C14",
    result,
    text: `${start}${legal}; ${walk}, ${dark}.`,
    subject,
    inputs: {
      legalEnd: iso(legalEnd),
      ownLimit: iso(ownLimit),
      marginMin,
      walkOutMin,
      darkOutMin,
      startDownAt: iso(down),
    },
  };
}
