import type { AreaContent } from "../content/areaContent.ts";

type Permission = AreaContent["facts"]["permission"][number];

/** Whether a permission holds on a day. */
export function permissionState(
  permission: Permission,
  localDate: string,
): "holds" | "over" | "not yet" | "withdrawn" {
  if (permission.withdrawn === true) return "withdrawn";
  if (permission.to < localDate) return "over";
  return permission.from > localDate ? "not yet" : "holds";
}

/**
 * Whether one may be on the ground of a block (null: ground of no block) on a day: by the permissions of the block, else those of
 * the whole area. Null when the owner has written none that speaks of it: then nobody knows.
 */
export function mayBeOn(area: AreaContent, block: string | null, localDate: string): boolean | null {
  const ofBlock = area.facts.permission.filter((p) => p.block !== undefined && p.block === block);
  const deciding = ofBlock.length > 0 ? ofBlock : area.facts.permission.filter((p) => p.block === undefined);
  if (deciding.length === 0) return null;
  return deciding.some((permission) => permissionState(permission, localDate) === "holds");
}
