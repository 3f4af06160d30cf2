import type { ForecastRow } from "../content/schema/tripSchema.ts";

const LAST_HOUR = 21;

/**
 * A forecast row for each hour of one day, from its first stated hour to 21:00. A day is written
 * "05 NW 3 g6 .1 30; 09 calm .0 38 thunder rain .2": a stated hour holds until the next; rain is an amount an hour.
 */
export function forecastRows(localDate: string, text: string): ForecastRow[] {
  const stated = text.split(";").map((part) => statedHour(part.trim().split(/\s+/)));
  return stated.flatMap(({ hour, row }, index) => {
    const until = stated[index + 1]?.hour ?? Math.max(LAST_HOUR, hour) + 1;
    return Array.from({ length: until - hour }, (_, step) => ({
      localDate,
      hour: `${String(hour + step).padStart(2, "0")}:00`,
      ...row,
    }));
  });
}

function statedHour(words: string[]): { hour: number; row: Omit<ForecastRow, "localDate" | "hour"> } {
  const [hour, windFrom, ...rest] = words;
  const isCalm = windFrom === "calm";
  const [windSpeed, gust] = isCalm ? ["0", "0"] : rest.splice(0, 2);
  const [cloudShare, temp, ...more] = rest;
  const rainAt = more.indexOf("rain");
  return {
    hour: Number(hour),
    row: {
      windFrom: windFrom as ForecastRow["windFrom"],
      windSpeed: Number(windSpeed),
      gust: Number(gust?.replace("g", "")),
      cloudShare: Number(cloudShare),
      temp: Number(temp),
      rain: rainAt < 0 ? 0 : Number(more[rainAt + 1]),
      thunder: more.includes("thunder"),
      freezingRain: false,
    },
  };
}
