import type { SharedData } from "../content/areaContent.ts";
import type { PackCheck, PackSite } from "../content/schema/packSchema.ts";

/**
 * The STOP checks that bar a whole site. A STOP that names one of several stands, lanes or walk-ins closes that one; it bars the
 * site when all of them have it.
 */
export function barringStops(
  site: Pick<PackSite, "checks" | "linesOfFire" | "walkIns">,
  shared: Pick<SharedData, "stands" | "firearms">,
): PackCheck[] {
  const parts = new Set([
    ...shared.stands.map((stand) => stand.id),
    ...shared.firearms.map((firearm) => firearm.id),
    ...(site.linesOfFire ?? []).map((line) => line.lane),
    ...site.walkIns.map((walkIn) => walkIn.id),
  ]);
  return site.checks.filter(
    (stop) =>
      stop.result === "STOP" &&
      (!parts.has(stop.subject) ||
        site.checks.every((other) => other.id !== stop.id || other.result === "STOP")),
  );
}
