import type { SharedData } from "../../content/areaContent.ts";
import type { PackCheck, PackSite } from "../../content/schema/packSchema.ts";
import { orderChecks } from "../../safety/orderChecks.ts";
import { siteStop } from "../../safety/siteChecks.ts";
import { sentenceStart } from "../words/listWords.ts";
import { checkTitle } from "./checkTitle.ts";
import type { AreaPack, CautionBox } from "./sheetParts.ts";

/** A check as a row of a table: what, the result word, the sentence, and whether a pen must fill it. */
export interface CheckRow {
  title: string;
  result: PackCheck["result"];
  text: string;
  /** a blank to fill in by pen stands in the row */
  pen: boolean;
}

/** Rows in the order of severity; none is dropped. */
export function checkRows(checks: readonly PackCheck[], area: AreaPack, shared: SharedData): CheckRow[] {
  return orderChecks(checks).map((check) => ({
    title: checkTitle(check.id),
    result: check.result,
    text: rowText(check, area, shared),
    pen: check.result === "NOT CHECKED",
  }));
}

/** The two worst STOP or CAUTION checks as Warning boxes, first of all the one that bars the site. */
export function worstCautions(
  site: Pick<PackSite, "id" | "checks">,
  area: AreaPack,
  shared: SharedData,
): CautionBox[] {
  const barring = siteStop(site.checks, site.id);
  const bad = orderChecks(site.checks).filter(
    (check) => check.result === "STOP" || check.result === "CAUTION",
  );
  return [...bad.filter((check) => check === barring), ...bad.filter((check) => check !== barring)]
    .slice(0, 2)
    .map((check) => ({
      level: "warning",
      title: `${checkTitle(check.id)}: ${check.result}`,
      text: rowText(check, area, shared),
    }));
}

/** The name of what a check is about, as the owner wrote it; ids without a name are left out. */
export function subjectName(subject: string, area: AreaPack, shared: SharedData): string | null {
  const { facts, sites } = area.content;
  const site = sites.find((s) => s.id === subject);
  if (site !== undefined) return `site ${site.facts.number} ${site.facts.name}`;
  const named = [
    ...shared.stands,
    ...shared.firearms,
    ...facts.camps,
    ...facts.parkings,
    ...facts.blocks,
  ].find((thing) => thing.id === subject);
  if (named !== undefined) return named.name;
  if (/^[A-Z]$/.test(subject)) return `lane ${subject}`;
  const walkIn = sites.flatMap((s) => s.facts.walkIns).find((w) => w.id === subject);
  if (walkIn !== undefined) return walkIn.name;
  const feature = area.content.map?.features.find((f) => f.properties.id === subject)?.properties;
  return feature?.name ?? null;
}

/** The sentence of a check, led by the stand, lane or way that it is about; what is about the site stands alone. */
function rowText(check: PackCheck, area: AreaPack, shared: SharedData): string {
  const name = subjectName(check.subject, area, shared);
  return name === null || name.startsWith("site ") ? check.text : `${sentenceStart(name)}: ${check.text}`;
}
