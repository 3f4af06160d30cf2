import { sentenceStart } from "../words/listWords.ts";
import { windRunsText } from "../words/windWords.ts";
import type { AreaPack } from "./sheetParts.ts";
import { siteBar } from "./siteBar.ts";

/** For one session and strength: which winds some open site suits, and which none. */
export interface CoverageRow {
  session: string;
  strength: string;
  covered: string;
  gaps: string;
}

/** Coverage in words. A barred site covers nothing, whatever the wind. */
export function coverageRows(area: AreaPack): CoverageRow[] {
  const barred = new Set(
    (area.pack.sites ?? []).filter((site) => siteBar(area, site) !== null).map((site) => site.id),
  );
  return area.details.sessions.flatMap(({ id }) =>
    (["light", "fresh", "calm"] as const).flatMap((strength) => {
      const rows = (area.pack.coverage ?? []).filter((row) => row.session === id && row.class === strength);
      if (rows.length === 0) return [];
      const covered = rows.filter((row) => row.suits.some((site) => !barred.has(site)));
      const gaps = rows.filter((row) => !covered.includes(row));
      const words = (list: typeof rows): string =>
        strength === "calm"
          ? list.length > 0
            ? "calm"
            : "none"
          : windRunsText(list.map((r) => r.windFrom)) || "none";
      return [{ session: sentenceStart(id), strength, covered: words(covered), gaps: words(gaps) }];
    }),
  );
}
