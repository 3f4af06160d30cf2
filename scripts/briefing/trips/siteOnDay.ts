import type { AreaContent } from "../../content/areaContent.ts";
import type { Check } from "../../safety/check.ts";
import { orderChecks } from "../../safety/orderChecks.ts";
import { siteChecks, siteStop } from "../../safety/siteChecks.ts";
import { type FailedPermission, failedPermission } from "../heldPermission.ts";
import type { TripFrame, TripSite } from "./tripFrame.ts";

/** What keeps a site off the list of a day, by the id of the check it falls under, in words. */
export interface SiteBar {
  check: string;
  reason: string;
}

/** The checks of a site on a trip day, and what bars it that day whatever the weather; null bars nothing. */
export interface SiteOnDay {
  site: TripSite;
  checks: Check[];
  bar: SiteBar | null;
}

/**
 * A site on one day: a permission that is over bars it under C30, the boundary of where one may be; else a STOP of its own
 * checks, judged for that very day.
 */
export function siteOnDay(site: TripSite, localDate: string, frame: TripFrame): SiteOnDay {
  const { context, limits } = frame;
  const { content } = context.area;
  const { id, facts } = site.content;
  const ofSite = siteChecks(
    {
      siteId: id,
      site: facts,
      stands: context.shared.stands,
      area: content.facts,
      haulLineM: null,
      onDate: localDate,
    },
    limits,
  );
  const checks = orderChecks([...ofSite, ...site.mapChecks]);
  const failed = failedPermission(content, facts.block ?? null, localDate);
  if (failed !== null)
    return { site, checks, bar: { check: "C30", reason: permissionWords(content, failed) } };
  const stop = siteStop(checks, id);
  return { site, checks, bar: stop === null ? null : { check: stop.id, reason: stop.text } };
}

function permissionWords(area: AreaContent, { permission, state }: FailedPermission): string {
  const block = area.facts.blocks.find(({ id }) => id === permission.block);
  const name = block?.name ?? permission.block ?? "this ground";
  if (state === "withdrawn") return `Permission for ${name} is withdrawn.`;
  return state === "over"
    ? `Permission for ${name} ended on ${permission.to}.`
    : `Permission for ${name} begins only on ${permission.from}.`;
}
