import type { SiteContent } from "../../content/areaContent.ts";
import type { Stand } from "../../content/schema/sharedDataSchema.ts";
import type { Check } from "../../safety/check.ts";
import { heightCheck } from "../../safety/heightCheck.ts";
import { hunterChecks } from "../../safety/hunterChecks.ts";
import { orderChecks } from "../../safety/orderChecks.ts";
import { trunkFit } from "../../safety/trunkFit.ts";
import type { Hunter, TripFrame } from "./tripFrame.ts";

/**
 * Hunter, kit and stand for one sit: load and dates (C6, C7) on the stand left at the site, else on the hunter's own, and
 * whether that stand fits the tree and the height there (C5, C8; subject the hunter, the site named). A ground seat asks
 * for none of them.
 */
export function gearChecks(hunter: Hunter, site: SiteContent, localDate: string, frame: TripFrame): Check[] {
  const { platformHeightM, tree, heightReason, stand: left } = site.facts;
  if (platformHeightM <= 0) return [];
  const { limits } = frame;
  const stand = standOf(left?.standId ?? hunter.standId, frame);
  const { id: subject } = hunter;
  const fit = trunkFit(
    { subject, stand: stand ?? { trunkMinMm: null, trunkMaxMm: null }, tree: tree ?? null, platformHeightM },
    limits,
  );
  const height = heightCheck(
    {
      subject,
      platformHeightM,
      maxPlatformHeightM: stand?.maxPlatformHeightM ?? null,
      heightReason: heightReason ?? null,
    },
    limits,
  );
  const there = [fit, height].map((check) => ({
    ...check,
    text: `At ${site.facts.name}: ${check.text}`,
    inputs: { ...check.inputs, site: site.id, stand: stand?.id ?? null },
  }));
  return orderChecks([...there, ...hunterChecks({ hunter, stand, onDate: localDate }, limits)]);
}

/** Load and dates of a hunter who has no sit that day, on the own stand. */
export function idleHunterChecks(hunter: Hunter, localDate: string, frame: TripFrame): Check[] {
  return hunterChecks({ hunter, stand: standOf(hunter.standId, frame), onDate: localDate }, frame.limits);
}

function standOf(standId: string | null, { context }: TripFrame): Stand | null {
  return context.shared.stands.find(({ id }) => id === standId) ?? null;
}
