import type { SiteDetails } from "../../content/schema/detailsSchema.ts";
import type { PackDay, PackSite } from "../../content/schema/packSchema.ts";
import { clockText, instantOf } from "../words/clockText.ts";
import { dateText } from "../words/dateText.ts";
import { sentenceStart } from "../words/listWords.ts";
import { airSpansOn } from "./airSpans.ts";
import type { AreaFrame } from "./areaFrame.ts";
import type { DayTracksChart } from "./charts.ts";
import { lightEvents, usableRange } from "./dayLight.ts";
import { turnRows } from "./turnWords.ts";

/** Light and slope air of a site on a day. Only confirmed legal hours get a bracket. */
export function dayTracksChart(
  frame: AreaFrame,
  site: PackSite,
  day: PackDay,
  details: SiteDetails | undefined,
): DayTracksChart {
  const { timezone, locale } = frame.area.pack.area;
  const sun = details?.sun.find((row) => row.localDate === day.localDate);
  const light = lightEvents(day);
  const air = airSpansOn(site, day.localDate);
  const { start, end, status } = day.shootingLight;
  const legal =
    status === "confirmed" && start !== null && end !== null
      ? { from: instantOf(start), to: instantOf(end) }
      : null;
  return {
    kind: "dayTracks",
    id: `day-${site.number}`,
    title: `Light and slope air, site ${site.number}, ${dateText(day.localDate, locale)}`,
    desc: describe(light, air === null ? [] : turnRows(air, 5, timezone), timezone),
    timezone,
    wideMm: frame.frameWidthMm,
    localDate: day.localDate,
    light,
    legal,
    usable: usableRange(sun?.usableFrom ?? null, sun?.usableUntil ?? null, timezone),
    air,
  };
}

function describe(
  light: DayTracksChart["light"],
  turns: { change: string; span: string }[],
  timezone: string,
): string {
  const events = (
    [
      ["first light", light.firstLight],
      ["sunrise", light.sunrise],
      ["sunset", light.sunset],
      ["last light", light.lastLight],
    ] as const
  ).map(([name, at]) => (at === null ? `no ${name}` : `${name} ${clockText(at, timezone)}`));
  const air =
    turns.length === 0
      ? ""
      : ` Slope air turns: ${turns.map((turn) => `${turn.change}, about ${turn.span}`).join("; ")}.`;
  return `${sentenceStart(events.join(", "))}.${air}`;
}
