import { compassPoint } from "../../../geo/compassPoints.ts";
import { bearingText } from "../../words/bearingText.ts";
import { clockText, instantOf } from "../../words/clockText.ts";
import { dayMonthText } from "../../words/dateText.ts";
import { type Units, windSpeedText } from "../../words/measureText.ts";
import { tempText } from "../../words/tempText.ts";
import type { AreaPack } from "../sheetParts.ts";
import type { TripDayDetails } from "./tripDetails.ts";

/** A stretch of the forecast of a day; what is not known says so. */
export interface ForecastRow {
  from: string;
  wind: string;
  speed: string;
  gusts: string;
  cloud: string;
  temp: string;
  /** "dry", "rain", "thunder", "freezing rain" */
  sky: string;
}

type Hour = TripDayDetails["hours"][number];

/** The forecast of a day from hour to hour; hours that say the same are one row. */
export function forecastRows(area: AreaPack, details: TripDayDetails | undefined): ForecastRow[] {
  const { timezone, units } = area.pack.area;
  const rows = (details?.hours ?? []).map((hour) => ({
    from: clockText(instantOf(hour.at), timezone),
    wind: windText(hour),
    speed: hour.wind === "calm" ? "calm" : known(hour.windSpeedMps, (mps) => windSpeedText(mps, units)),
    gusts: known(hour.gustMps, (mps) => windSpeedText(mps, units)),
    cloud: known(hour.cloudShare, (share) => `${Math.round(share * 8)}/8`),
    temp: known(hour.tempC, (tempC) => tempText(tempC, units)),
    sky: skyText(hour, units),
  }));
  const said = ({ from: _, ...row }: ForecastRow): string => JSON.stringify(row);
  return rows.filter((row, i) => i === 0 || said(row) !== said(rows[i - 1]!));
}

/** Issues of the forecast of a day in words: "4 Nov 04:00 and 5 Nov 16:00". */
export function issueTexts(area: AreaPack, details: TripDayDetails | undefined): string[] {
  const { timezone, locale } = area.pack.area;
  const issues = [...new Set((details?.hours ?? []).map((hour) => hour.issuedAt))].sort();
  return issues.map((at) => `${dayMonthText(at.slice(0, 10), locale)} ${clockText(instantOf(at), timezone)}`);
}

function windText(hour: Hour): string {
  if (hour.wind === "calm") return "calm";
  if (hour.wind === "variable") return "no steady direction";
  return hour.windFromDeg === null
    ? "not known"
    : `from ${compassPoint(hour.windFromDeg)} ${bearingText(hour.windFromDeg)}`;
}

function skyText(hour: Hour, units: Units): string {
  const rain = hour.rainMmPerH;
  const words = [
    hour.thunder === true ? "thunder" : [],
    hour.freezingRain === true ? "freezing rain" : [],
    rain !== null && rain > 0 && hour.freezingRain !== true ? `rain ${rainText(rain, units)}` : [],
    hour.thunder === null ? "thunder not known" : [],
  ].flat();
  if (words.length > 0) return words.join(", ");
  return rain === null ? "rain not known" : "dry";
}

function rainText(mmPerH: number, units: Units): string {
  return units === "us" ? `${(mmPerH / 25.4).toFixed(2)} in/h` : `${mmPerH} mm/h`;
}

function known(value: number | null, text: (value: number) => string): string {
  return value === null ? "not known" : text(value);
}
