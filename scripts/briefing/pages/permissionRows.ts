import type { AreaContent } from "../../content/areaContent.ts";
import { dateSpanText, dateText } from "../words/dateText.ts";
import { isOldFact } from "../words/factAge.ts";
import type { AreaPack } from "./sheetParts.ts";

type Permission = AreaContent["facts"]["permission"][number];

/** A permission as the area page shows it. */
export interface PermissionRow {
  what: string;
  where: string;
  dates: string;
  conditions: string;
  source: string;
  old: boolean;
  /** crossed out: it is over, or withdrawn */
  struck: boolean;
  /** what to do about it, or null when it holds */
  ask: string | null;
}

/** The civil date of the as-of instant, in the zone of the area: pack.json writes instants in that zone. */
export function asOfDate(area: AreaPack): string {
  return area.pack.asOf.slice(0, 10);
}

/** Every permission in the order of the owner's file. */
export function permissionRows(area: AreaPack): PermissionRow[] {
  const { locale } = area.pack.area;
  return area.content.facts.permission.map((permission) => {
    const state = stateOf(permission, area);
    return {
      what: permission.holder === undefined ? permission.kind : `${permission.kind}, ${permission.holder}`,
      where: whereText(permission, area),
      dates: dateSpanText(permission.from, permission.to, locale),
      conditions:
        permission.conditions.length === 0 ? "no conditions noted" : permission.conditions.join(" "),
      source: `${permission.source}, checked ${dateText(permission.checkedOn, locale)}`,
      old: isOldFact(permission.checkedOn, asOfDate(area)),
      struck: state === "over" || state === "withdrawn",
      ask: askText(permission, state, area),
    };
  });
}

/**
 * Why no permission holds for ground, on the as-of date and on the day of the tables; null when one does, or when the
 * owner has written none (an area page then says that none was entered).
 */
export function lapsedFor(area: AreaPack, block: string | null): string | null {
  const forGround = area.content.facts.permission.filter((p) => p.block === undefined || p.block === block);
  const forBlock = forGround.filter((p) => p.block !== undefined);
  const deciding = forBlock.length > 0 ? forBlock : forGround;
  const failed = deciding.filter((p) => stateOf(p, area) !== "holds");
  if (deciding.length === 0 || failed.length < deciding.length) return null;
  const last = failed.at(-1)!;
  return `${whereText(last, area)}: ${askText(last, stateOf(last, area), area)}`;
}

type State = "holds" | "over" | "not yet" | "withdrawn";

function stateOf(permission: Permission, area: AreaPack): State {
  if (permission.withdrawn === true) return "withdrawn";
  const { tableDate } = area.pack;
  if (permission.to < asOfDate(area) || permission.to < tableDate) return "over";
  return permission.from > tableDate ? "not yet" : "holds";
}

function askText(permission: Permission, state: State, area: AreaPack): string | null {
  const { locale } = area.pack.area;
  const ask = `ask ${permission.holder ?? "the landholder"} before you go`;
  if (state === "withdrawn") return `Permission withdrawn; ${ask}.`;
  if (state === "over") return `Permission ended ${dateText(permission.to, locale)}; ${ask}.`;
  if (state === "not yet") return `Permission starts ${dateText(permission.from, locale)}; ${ask}.`;
  return null;
}

function whereText(permission: Permission, area: AreaPack): string {
  if (permission.block === undefined) return "Whole area";
  return area.content.facts.blocks.find((block) => block.id === permission.block)?.name ?? permission.block;
}
