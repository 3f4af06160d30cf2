import type { AreaContent } from "../../content/areaContent.ts";
import { failedPermission, type PermissionState, permissionState } from "../heldPermission.ts";
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
 * Why ground is barred on the as-of date or on the day of the tables; null when every permission that it needs holds, or when the
 * owner has written none (an area page then says that none was entered).
 */
export function lapsedFor(area: AreaPack, block: string | null): string | null {
  for (const localDate of [asOfDate(area), area.pack.tableDate]) {
    const failed = failedPermission(area.content, block, localDate);
    if (failed === null) continue;
    if (failed.state === "not yet" && localDate !== area.pack.tableDate) continue;
    return `${whereText(failed.permission, area)}: ${askText(failed.permission, failed.state, area)}`;
  }
  return null;
}

/** Over as soon as it is over on either day: a pack is read between the two. */
function stateOf(permission: Permission, area: AreaPack): PermissionState {
  const now = permissionState(permission, asOfDate(area));
  return now === "over" ? now : permissionState(permission, area.pack.tableDate);
}

function askText(permission: Permission, state: PermissionState, area: AreaPack): string | null {
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
