import { coverage, gapSentences } from "../air/coverage.ts";
import type { PackCoverageRow, PackSite } from "../content/schema/packSchema.ts";

export interface ComposedCoverage {
  coverage: PackCoverageRow[];
  gapSentences: string[];
}

/**
 * Which sites suit each wind and session, and the winds that leave none. A site where a check says STOP, or whose permission is
 * over, is no site to sit at and never counts.
 *
 * @param open  the sites one may sit at
 */
export function composeCoverage(open: readonly PackSite[], sessions: readonly string[]): ComposedCoverage {
  const rows = coverage(
    open.map((site) => ({ siteId: site.id, rows: site.sessionTable })),
    sessions,
  );
  return {
    coverage: rows.map((row) => ({
      session: row.session,
      windFrom: row.windFrom,
      class: row.class,
      suits: row.suits,
      gap: row.gap,
      blowsShare: null,
      why: { blowsShare: "wind records are not read by this version of the program" },
    })),
    gapSentences: gapSentences(rows),
  };
}
