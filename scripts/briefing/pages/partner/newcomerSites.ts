import type { SharedData } from "../../../content/areaContent.ts";
import type { PackSite } from "../../../content/schema/packSchema.ts";
import { aboutMinutesText } from "../../words/durationText.ts";
import { platformText } from "../../words/measureText.ts";
import { checkTitle } from "../checkTitle.ts";
import { modelNumber } from "../modelNumber.ts";
import type { AreaPack } from "../sheetParts.ts";
import { siteBar } from "../siteBar.ts";

/** A site as a newcomer's first tree: fits, or every reason why not. */
export interface NewcomerSite {
  site: PackSite;
  walk: string;
  platform: string;
  /** empty when the site fits */
  against: string[];
}

// asked for by pen or on the day, since no file can hold them: haul line, field grid, contact
const BY_PEN = ["C9", "C18", "C25"];

/**
 * Sites of the edition by whether a newcomer may begin there: a short walk without a crossing, a low platform, no STOP and
 * nothing NOT CHECKED about tree and stand. Limits are defaults of data/model.json, no rule.
 */
export function newcomerSites(area: AreaPack, shared: SharedData): NewcomerSite[] {
  const walkMaxMin = modelNumber(shared.model, "newcomerWalkMaxMin");
  const platformMaxM = modelNumber(shared.model, "newcomerPlatformMaxM");
  return (area.pack.sites ?? []).map((site) => {
    const heightM = area.content.sites.find((entry) => entry.id === site.id)?.facts.platformHeightM ?? null;
    const { units } = area.pack.area;
    const walk = firstWalk(site, walkMaxMin);
    const bar = siteBar(area, site);
    return {
      site,
      walk: walk.text,
      platform: heightM === null ? "not known" : platformText(heightM, units),
      against: [
        bar === null ? [] : [bar.heading === "STOP" ? "STOP" : "no permission"],
        walk.against,
        heightM === null
          ? ["height not known"]
          : heightM > platformMaxM
            ? [`platform ${platformText(heightM, units)}`]
            : [],
        notChecked(site),
      ].flat(),
    };
  });
}

/** The quickest walk-in without a crossing, else the quickest, and what speaks against it. */
function firstWalk(site: PackSite, maxMin: number): { text: string; against: string[] } {
  const timed = site.walkIns
    .flatMap((walkIn) =>
      walkIn.minutes === null ? [] : [{ minutes: walkIn.minutes, crossings: walkIn.crossings }],
    )
    .sort((a, b) => a.minutes[1] - b.minutes[1]);
  const walk = timed.find((walkIn) => walkIn.crossings === 0) ?? timed[0];
  if (walk === undefined) return { text: "not known", against: ["walk not known"] };
  const text = aboutMinutesText(walk.minutes);
  return {
    text,
    against: [
      walk.minutes[1] > maxMin ? ["long walk"] : [],
      walk.crossings === null ? ["crossings NOT CHECKED"] : walk.crossings > 0 ? ["water to cross"] : [],
    ].flat(),
  };
}

function notChecked(site: PackSite): string[] {
  const own = site.checks.filter(
    (check) => check.subject === site.id && check.result === "NOT CHECKED" && !BY_PEN.includes(check.id),
  );
  const ofStands = site.checks.filter((check) => check.id === "C5" || check.id === "C8");
  const stands = [...new Set(ofStands.map((check) => check.subject))];
  const usable = stands.some((stand) =>
    ofStands
      .filter((check) => check.subject === stand)
      .every((check) => check.result === "OK" || check.result === "CAUTION"),
  );
  return [
    ...own.map((check) => `${checkTitle(check.id).toLowerCase()} NOT CHECKED`),
    ...(ofStands.length > 0 && !usable ? ["no stand is known to fit"] : []),
  ];
}
