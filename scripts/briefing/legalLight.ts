import type { AreaContent } from "../content/areaContent.ts";
import type { PackShootingLight } from "../content/schema/packSchema.ts";
import type { Position } from "../geo/position.ts";
import { type ShootingLight, shootingLight } from "../light/shootingLight.ts";
import type { SunAnchorsOf } from "../light/sunAnchors.ts";
import { type Hunt, isInSeason } from "./hunt.ts";
import { packInstant } from "./packInstant.ts";

/** Legal shooting light of a hunt on one day, for the place that the rule's words "the site" mean. */
export function legalLight(
  area: AreaContent,
  hunt: Hunt,
  localDate: string,
  place: Position,
  sunOf: SunAnchorsOf,
): ShootingLight {
  return shootingLight(
    {
      layers: area.facts.shootingLight,
      tables: area.shootingTables,
      localDate,
      timezone: area.facts.timezone,
      sitePosition: place,
      species: hunt.species,
      method: hunt.method,
      land: hunt.land,
      seasonConfirmed: isInSeason(area, hunt, localDate),
    },
    sunOf,
  );
}

/** The same in the shape of pack.json. */
export function packShootingLight(light: ShootingLight, timezone: string): PackShootingLight {
  return {
    start: packInstant(light.start, timezone),
    end: packInstant(light.end, timezone),
    startLayer: light.startLayer,
    endLayer: light.endLayer,
    ruleIds: light.ruleIds,
    status: light.status,
    why: light.why,
  };
}
