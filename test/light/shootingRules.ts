import type { RuleMoment } from "../../scripts/content/schema/primitives.ts";
import { type ShootingRule, shootingRule } from "../../scripts/content/schema/shootingRuleSchema.ts";
import { type ShootingLightRequest, shootingLight } from "../../scripts/light/shootingLight.ts";
import type { SunAnchors } from "../../scripts/light/sunAnchors.ts";
import { civilAt } from "../../scripts/time/civilTime.ts";

/** A rule with the given parts and everything else open; it must also pass the schema an owner's file has to pass. */
export function rule(
  parts: Partial<Omit<ShootingRule, "applies">> & { applies?: Partial<ShootingRule["applies"]> },
): ShootingRule {
  return shootingRule.parse({
    id: "rule",
    jurisdiction: "invented",
    reading: "allowed",
    reference: { kind: "site" },
    windows: [],
    ...parts,
    source: { citation: "invented", checkedOn: "2026-02-20", status: "confirmed", ...parts.source },
    valid: parts.valid ?? { from: "2026-01-01", to: "2026-12-31" },
    applies: { species: ["any"], method: ["any"], land: ["any"], ...parts.applies },
  });
}

export function sun(anchor: Exclude<RuleMoment["anchor"], "clock" | "none">, offsetMin?: number): RuleMoment {
  return offsetMin === undefined ? { anchor } : { anchor, offsetMin };
}

export function clock(at: string): RuleMoment {
  return { anchor: "clock", at };
}

export function span(start: RuleMoment, end: RuleMoment): ShootingRule["windows"][number] {
  return { start, end };
}

/** The day of the check values: sunrise 06:42:31, sunset 17:18:10, one clock. */
export function checkDay(localDate = "2026-04-04"): SunAnchors {
  const at = (clockText: string) => new Date(`${localDate}T${clockText}Z`);
  return {
    sunrise: at("06:42:31"),
    sunset: at("17:18:10"),
    civilDawn: at("06:15:00"),
    civilDusk: at("17:45:30"),
    nauticalDawn: at("05:44:00"),
    nauticalDusk: at("18:16:00"),
    solarNoon: at("12:00:20"),
    about: [],
    why: {},
  };
}

export function request(
  layers: ShootingLightRequest["layers"],
  other: Partial<ShootingLightRequest> = {},
): ShootingLightRequest {
  return {
    layers,
    tables: {},
    localDate: "2026-04-04",
    timezone: "UTC",
    sitePosition: { lat: -45, lon: 0 },
    species: "red deer",
    method: "rifle",
    land: "public",
    seasonConfirmed: true,
    ...other,
  };
}

/** The hours of the check day as "06:13-17:48", several joined by a space, "" for none. */
export function hours(
  layers: ShootingLightRequest["layers"],
  other: Partial<ShootingLightRequest> = {},
): string {
  const asked = request(layers, other);
  const found = shootingLight(asked, (localDate) => checkDay(localDate));
  const text = (at: Date) => civilAt(at, asked.timezone).clock;
  return found.windows.map(({ start, end }) => `${text(start)}-${text(end)}`).join(" ");
}
