import { compassPoint } from "../../../geo/compassPoints.ts";
import { bearingText } from "../../words/bearingText.ts";
import { clockText, instantOf } from "../../words/clockText.ts";
import { dayMonthText } from "../../words/dateText.ts";
import { type Units, windSpeedText } from "../../words/measureText.ts";
import { tempText } from "../../words/tempText.ts";
import type { AreaPack } from "../sheetParts.ts";
import type { PackTripSession } from "./sessionStops.ts";

type Forecast = NonNullable<PackTripSession["forecast"]>;

/** Where the wind is expected from: "from WNW", "calm", "from a direction not known". */
export function expectedWind(forecast: Pick<Forecast, "windFromDeg" | "windSpeedMps" | "why">): string {
  if (forecast.windFromDeg !== null) return `from ${compassPoint(forecast.windFromDeg)}`;
  const why = forecast.why.windFromDeg ?? "";
  if (forecast.windSpeedMps === 0 || why === "calm") return "calm";
  return /variable/.test(why) ? "from no steady direction" : "from a direction not known";
}

/** A forecast in words: "wind from WNW (292), 4 mph, gusts 8 mph, cloud 2/8, 31 °F". */
export function forecastText(
  forecast: Pick<Forecast, "windFromDeg" | "windSpeedMps" | "gustMps" | "cloudShare" | "tempC" | "why">,
  units: Units,
): string {
  const wind = expectedWind(forecast);
  const speed = forecast.windSpeedMps;
  return [
    forecast.windFromDeg === null
      ? wind === "calm"
        ? "calm"
        : `wind ${wind}`
      : `wind ${wind} (${bearingText(forecast.windFromDeg)})`,
    wind === "calm" ? [] : speed === null ? "speed not known" : windSpeedText(speed, units),
    forecast.gustMps === null ? "gusts not known" : `gusts ${windSpeedText(forecast.gustMps, units)}`,
    forecast.cloudShare === null ? "cloud not known" : `cloud ${Math.round(forecast.cloudShare * 8)}/8`,
    forecast.tempC === null ? "temperature not known" : tempText(forecast.tempC, units),
  ]
    .flat()
    .join(", ");
}

/** "Demo forecast, issued 5 Nov 04:00, OLD FORECAST". */
export function forecastSource(forecast: Forecast, area: AreaPack): string {
  const { timezone, locale } = area.pack.area;
  const date = dayMonthText(forecast.issuedAt.slice(0, 10), locale);
  const issued = `${forecast.source}, issued ${date} ${clockText(instantOf(forecast.issuedAt), timezone)}`;
  return forecast.old ? `${issued}, OLD FORECAST` : issued;
}
