import type { Check } from "../../safety/check.ts";
import { partySeparation, type TakenSeat } from "../../safety/partySeparation.ts";
import { shootingRules } from "../../shooting/shootingRules.ts";
import type { Firearm } from "../siteWeapon.ts";
import { stripBetween } from "../stripBetween.ts";
import type { HunterSit } from "./hunterSits.ts";
import type { TripFrame } from "./tripFrame.ts";

const ARROWS: readonly Firearm["weaponClass"][] = ["bow", "crossbow"];

/**
 * The sits of one session held against each other (C24). Of two of whom one would sit in the lane of the other the first, in the order
 * of the trip, keeps his sit and the other is stopped. Only kept sits count: a stopped hunter is not out there.
 */
export function separatedSits(
  sits: readonly HunterSit[],
  frame: TripFrame,
): { sits: HunterSit[]; checks: Check[] } {
  const { shapes, shared } = frame.context;
  const clearM = shootingRules(shared.model).noShootClearM;
  const kept: HunterSit[] = [];
  const checks: Check[] = [];
  const separated = sits.map((sit): HunterSit => {
    if (sit.times === null) return sit;
    const own = kept.flatMap((other) =>
      partySeparation(
        [takenSeat(other, frame), takenSeat(sit, frame)],
        (a, b) => stripBetween(shapes, a.position, b.position),
        clearM,
        frame.limits,
      ),
    );
    checks.push(...own);
    const stop = own.find(({ result }) => result === "STOP");
    if (stop === undefined) {
      kept.push(sit);
      return sit;
    }
    return {
      ...sit,
      stop: `STOP ${stop.id}: ${stop.text}`,
      times: null,
      darkIn: null,
      darkOut: null,
      wakeAt: null,
    };
  });
  return { sits: separated, checks };
}

function takenSeat({ hunter, entry }: HunterSit, { context }: TripFrame): TakenSeat {
  const { id, facts } = entry.site.content;
  const weapon = context.shared.firearms.find((firearm) => firearm.id === hunter.firearmId) ?? null;
  return {
    hunterId: hunter.id,
    hunterName: hunter.name,
    siteId: id,
    siteName: facts.name,
    position: facts.position,
    lanes: facts.lanes,
    dangerM: weapon?.dangerM ?? null,
    isFirearm: weapon === null ? null : !ARROWS.includes(weapon.weaponClass),
  };
}
