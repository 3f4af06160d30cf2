import type { PackSite } from "../../content/schema/packSchema.ts";
import { instantOf } from "../words/clockText.ts";
import type { AirSpan } from "./charts.ts";

/** Spans of the slope air of a site on a day as instants; null when the site has no phases or not that day. */
export function airSpansOn(site: PackSite, localDate: string): AirSpan[] | null {
  const day = site.phases?.find((row) => row.localDate === localDate);
  if (day === undefined) return null;
  return day.spans.map((span) => ({
    phase: span.phase,
    from: instantOf(span.from),
    to: instantOf(span.to),
    fromRange: rangeOf(span.fromRange, span.from),
    toRange: rangeOf(span.toRange, span.to),
  }));
}

function rangeOf(range: [string, string] | null, plain: string): [Date, Date] {
  return range === null ? [instantOf(plain), instantOf(plain)] : [instantOf(range[0]), instantOf(range[1])];
}
