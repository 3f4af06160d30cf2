import type { AreaContent } from "../content/areaContent.ts";

type Permission = AreaContent["facts"]["permission"][number];
export type PermissionState = "holds" | "over" | "not yet" | "withdrawn";

/** Whether a permission holds on a day. */
export function permissionState(permission: Permission, localDate: string): PermissionState {
  if (permission.withdrawn === true) return "withdrawn";
  if (permission.to < localDate) return "over";
  return permission.from > localDate ? "not yet" : "holds";
}

/** A permission that does not hold, and why. */
export interface FailedPermission {
  permission: Permission;
  state: Exclude<PermissionState, "holds">;
}

/**
 * The permission whose want bars the ground of a block (null: ground of no block) on a day. Of each kind that the owner has
 * written, for the block and for the whole area, one must hold; one that was taken back is only answered by one checked later.
 *
 * @returns null when every kind holds, or when nothing is written that speaks of the ground: see {@link mayBeOn}
 */
export function failedPermission(
  area: AreaContent,
  block: string | null,
  localDate: string,
): FailedPermission | null {
  for (const group of groupsFor(area, block)) {
    const withdrawn = group.filter((permission) => permission.withdrawn === true);
    const holds = group.some(
      (permission) =>
        permissionState(permission, localDate) === "holds" &&
        withdrawn.every((taken) => taken.checkedOn < permission.checkedOn),
    );
    if (holds) continue;
    const permission = withdrawn[0] ?? group.toSorted((a, b) => (a.to < b.to ? 1 : -1))[0];
    const state = permission === undefined ? "holds" : permissionState(permission, localDate);
    if (permission !== undefined && state !== "holds") return { permission, state };
  }
  return null;
}

/** Whether one may be on the ground of a block on a day. Null when the owner has written nothing that speaks of it: nobody knows. */
export function mayBeOn(area: AreaContent, block: string | null, localDate: string): boolean | null {
  if (groupsFor(area, block).length === 0) return null;
  return failedPermission(area, block, localDate) === null;
}

/** The permissions that speak of the ground by scope and kind, those of the block first. */
function groupsFor(area: AreaContent, block: string | null): Permission[][] {
  const groups = new Map<string, Permission[]>();
  const ofBlock = area.facts.permission.filter((entry) => entry.block !== undefined && entry.block === block);
  const ofArea = area.facts.permission.filter((entry) => entry.block === undefined);
  for (const permission of [...ofBlock, ...ofArea]) {
    const key = `${permission.block ?? ""} ${permission.kind}`;
    groups.set(key, [...(groups.get(key) ?? []), permission]);
  }
  return [...groups.values()];
}
