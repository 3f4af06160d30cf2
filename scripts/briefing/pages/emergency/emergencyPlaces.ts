import type { PackSite } from "../../../content/schema/packSchema.ts";
import { decimalDegreesText, degreesMinutesText } from "../../../geo/coordinateText.ts";
import { aboutMinutesText } from "../../words/durationText.ts";
import { heightText } from "../../words/measureText.ts";
import { spokenDigits } from "../../words/spokenDigits.ts";
import type { AreaPack } from "../sheetParts.ts";

/** A site as it is read out to a rescue desk. */
export interface EmergencyPlace {
  number: number;
  name: string;
  decimal: string;
  minutes: string;
  grid: string;
  height: string;
  /** the quickest way in that has a time */
  wayIn: string;
}

/** Every site of the edition, barred ones too: a person may lie there all the same. */
export function emergencyPlaces(area: AreaPack): EmergencyPlace[] {
  return (area.pack.sites ?? []).map((site) => ({
    number: site.number,
    name: site.name,
    decimal: decimalDegreesText(site.position),
    minutes: degreesMinutesText(site.position),
    grid: site.grid,
    height:
      site.elevationM === null
        ? "height not known"
        : `height ${heightText(site.elevationM, area.pack.area.units)}`,
    wayIn: quickestWayIn(area, site),
  }));
}

/** How the first place is read out, digit by digit; null without a place. */
export function readAloud(places: readonly EmergencyPlace[]): string | null {
  const [first] = places;
  if (first === undefined) return null;
  const [lat, lon] = first.decimal.split(", ");
  return `Read every digit by itself. Site ${first.number}: latitude ${spokenDigits(lat ?? "")}, longitude ${spokenDigits(lon ?? "")}.`;
}

function quickestWayIn(area: AreaPack, site: PackSite): string {
  const { facts } = area.content;
  const written = area.content.sites.find((s) => s.id === site.id)?.facts.walkIns ?? [];
  const timed = site.walkIns.flatMap((walkIn) =>
    walkIn.minutes === null ? [] : [{ ...walkIn, minutes: walkIn.minutes }],
  );
  const quickest = timed.sort((a, b) => a.minutes[1] - b.minutes[1])[0];
  if (quickest === undefined) return "time on foot not known";
  const from = written.find((walkIn) => walkIn.id === quickest.id)?.from;
  const start = [...facts.parkings, ...facts.camps].find((place) => place.id === from)?.name;
  return `on foot ${aboutMinutesText(quickest.minutes)} from ${start ?? "a start that is not named"}`;
}
