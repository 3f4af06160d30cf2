import type { SharedData } from "../../content/areaContent.ts";
import type { PackSite } from "../../content/schema/packSchema.ts";
import { dateText } from "../words/dateText.ts";
import { listWords } from "../words/listWords.ts";
import { windSpeedText } from "../words/measureText.ts";
import { type AreaFrame, areaSheetBase } from "./areaFrame.ts";
import { barredSites } from "./barredSites.ts";
import { gapLines } from "./gapLines.ts";
import { modelNumber } from "./modelNumber.ts";
import type { Sheet } from "./sheetParts.ts";
import { type WindListEntry, windList } from "./windList.ts";
import { phaseMatrices, sessionMatrices, type WindMatrix } from "./windMatrix.ts";

/** One wind strength: the list for a small screen and the matrices. */
export interface StrengthSection {
  id: "light" | "fresh";
  title: string;
  list: WindListEntry[];
  matrices: WindMatrix[];
}

/** With this wind and session, where can I sit? */
export interface WindTableSheet extends Sheet {
  gaps: string[];
  strengths: StrengthSection[];
  phases: WindMatrix[];
  computedFor: string;
  hasLocalNote: boolean;
  barred: { number: number; name: string; reason: string }[];
  /** "2 Lower Bench: not with the long-chain climbing stand." */
  closedStands: string[];
}

/** The wind table of an area; an edition without sites has none. */
export function windTableSheets(frame: AreaFrame, shared: SharedData): WindTableSheet[] {
  const { area } = frame;
  const { pack, details } = area;
  if (pack.sites === null || pack.sites.length === 0) return [];
  const { units, locale } = pack.area;
  const speed = (id: string): string => windSpeedText(modelNumber(shared.model, id), units);
  const light = speed("lightWindMps");
  const fresh = speed("freshWindMps");
  const gaps = gapLines(area);
  const barred = barredSites(area);
  const a5 = frame.paper === "a5";
  const section = (id: "light" | "fresh", title: string): StrengthSection => ({
    id,
    title,
    list: windList(area, id),
    matrices: sessionMatrices(area, id, title, a5 ? 8 : 12),
  });
  return [
    {
      ...areaSheetBase(frame, {
        permalink: `${frame.folder}wind-table.html`,
        pageName: "Wind table",
        title: "Wind table",
        answer: {
          core: gaps[0] ?? "Some site suits every wind of the tables.",
          rest: gaps.length > 1 ? `${gaps.length - 1} more below.` : null,
        },
        exception: barredSentence(barred),
        cautions: [],
      }),
      gaps,
      strengths: [
        section("light", `Light wind, about ${light}`),
        section("fresh", `Fresh wind, about ${fresh}`),
      ],
      phases: (["light", "fresh"] as const).flatMap((windClass) =>
        details.sessions.flatMap(({ id }) => phaseMatrices(area, windClass, id, a5 ? 5 : 8)),
      ),
      computedFor: `Computed for ${dateText(pack.tableDate, locale)}, clear sky, wind at 10 m in the open.`,
      hasLocalNote: pack.sites.some((site) => site.sessionTable.some((row) => row.localNote)),
      barred,
      closedStands: closedStandLines(pack.sites, barred, shared),
    },
  ];
}

function barredSentence(barred: { number: number; name: string }[]): string | null {
  return barred.length === 0
    ? null
    : `Do not sit at ${listWords(barred.map((site) => `${site.number} ${site.name}`))}: reasons below.`;
}

/** Stands that a site is closed for although others may be used there. */
function closedStandLines(
  sites: readonly PackSite[],
  barred: { number: number }[],
  shared: SharedData,
): string[] {
  return sites.flatMap((site) => {
    const names = shared.stands
      .filter(({ id }) => site.checks.some((check) => check.result === "STOP" && check.subject === id))
      .map((stand) => stand.name);
    if (names.length === 0 || barred.some((other) => other.number === site.number)) return [];
    return [`${site.number} ${site.name}: not with the ${listWords(names, "or the")}.`];
  });
}
