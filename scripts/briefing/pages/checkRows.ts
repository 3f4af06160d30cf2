import type { SharedData } from "../../content/areaContent.ts";
import type { PackCheck, PackSite } from "../../content/schema/packSchema.ts";
import { orderChecks } from "../../safety/orderChecks.ts";
import { siteStop } from "../../safety/siteChecks.ts";
import { listWords, sentenceStart } from "../words/listWords.ts";
import { checkText } from "./checkText.ts";
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

/** What was OK of one kind: a title and everything that was found, in one line. */
export interface FineRow {
  title: string;
  text: string;
}

/**
 * What was OK, a row a kind of check, in the order of severity. The words that all checks of a kind begin with stand once:
 * "Platform at 4.3 m. The label allows broad stand: 6 m; light stand: 5.5 m."
 */
export function fineRows(checks: readonly PackCheck[], area: AreaPack, shared: SharedData): FineRow[] {
  const fine = orderChecks(checks).filter((check) => check.result === "OK");
  return [...new Set(fine.map(({ id }) => id))].map((id) => ({
    title: checkTitle(id),
    text: togetherText(
      fine.filter((check) => check.id === id),
      area,
      shared,
    ),
  }));
}

// words that the findings of several stands begin with
const LEADS = ["the label allows ", "stand takes "];

function togetherText(checks: readonly PackCheck[], area: AreaPack, shared: SharedData): string {
  const split = checks.map((check) => {
    const [first = "", ...rest] = checkText(check, area).replace(/\.$/, "").split("; ");
    return { name: ownName(check, area, shared), first, rest: rest.join("; ") };
  });
  const isShared =
    split.length > 1 &&
    split.every(({ first, rest, name }) => first === split[0]?.first && rest !== "" && name !== null);
  if (!isShared) return checks.map((check) => rowText(check, area, shared)).join(" ");
  const lead = LEADS.find((words) => split.every(({ rest }) => rest.startsWith(words))) ?? "";
  const rests = [...new Set(split.map(({ rest }) => rest))].map((rest) => {
    const names = split.filter((part) => part.rest === rest).flatMap(({ name }) => name ?? []);
    return `${listWords([...new Set(names)])}: ${rest.slice(lead.length)}`;
  });
  return `${split[0]?.first}. ${sentenceStart(`${lead}${rests.join("; ")}`)}.`;
}

/** What was not OK, a row a kind of check and result, in the order of severity; no finding is dropped. */
export function openRows(checks: readonly PackCheck[], area: AreaPack, shared: SharedData): CheckRow[] {
  const open = orderChecks(checks).filter((check) => check.result !== "OK");
  const kinds = new Map<string, PackCheck[]>();
  for (const check of open) {
    const kind = `${check.result} ${check.id}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), check]);
  }
  return [...kinds.values()].flatMap((of) => {
    const [first] = of;
    if (first === undefined) return [];
    return {
      title: checkTitle(first.id),
      result: first.result,
      text: togetherText(of, area, shared),
      pen: first.result === "NOT CHECKED",
    };
  });
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
  const name = ownName(check, area, shared);
  const text = checkText(check, area);
  return name === null ? text : `${sentenceStart(name)}: ${text}`;
}

/** The stand, lane or way that a check is about; null for the site itself. */
function ownName(check: PackCheck, area: AreaPack, shared: SharedData): string | null {
  const name = subjectName(check.subject, area, shared);
  return name === null || name.startsWith("site ") ? null : name;
}
