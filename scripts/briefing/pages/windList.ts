import { COMPASS_POINTS } from "../../geo/compassPoints.ts";
import { sentenceStart } from "../words/listWords.ts";
import type { AreaPack } from "./sheetParts.ts";
import { siteBar } from "./siteBar.ts";
import { sessionCell, type VerdictWord, windHead } from "./siteWindTable.ts";

const VERDICTS: readonly VerdictWord[] = ["suits", "marginal", "avoid", "not assessed"];

/** The sites of one wind for a small screen: choose the wind, read the sites. */
export interface WindListEntry {
  /** "From NNW, 338" or "Calm" */
  title: string;
  sessions: { title: string; lines: { verdict: VerdictWord; sites: string }[] }[];
  /** sites that are barred whatever the wind, else null */
  barred: string | null;
}

/** 17 entries, N clockwise then calm, for one wind strength. */
export function windList(area: AreaPack, windClass: "light" | "fresh"): WindListEntry[] {
  const sites = area.pack.sites ?? [];
  const open = sites.filter((site) => siteBar(area, site) === null);
  const barred = sites.filter((site) => !open.includes(site));
  return [...COMPASS_POINTS, "calm"].map((wind) => {
    const { degrees } = windHead(wind);
    return {
      title: wind === "calm" ? "Calm" : `From ${wind}, ${degrees}`,
      sessions: area.details.sessions.map(({ id }) => ({
        title: sentenceStart(id),
        lines: VERDICTS.flatMap((verdict) => {
          const named = open.filter((site) => sessionCell(site, id, wind, windClass).verdict === verdict);
          return named.length === 0
            ? []
            : [{ verdict, sites: named.map((site) => `${site.number} ${site.name}`).join(", ") }];
        }),
      })),
      barred: barred.length === 0 ? null : barred.map((site) => `${site.number} ${site.name}`).join(", "),
    };
  });
}
