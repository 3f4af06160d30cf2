import type { PhaseSpan } from "../air/phaseSpans.ts";
import type { SlopePhases } from "../air/slopeAirDay.ts";
import type { SiteDetails } from "../content/schema/detailsSchema.ts";
import type { PackSite } from "../content/schema/packSchema.ts";
import { rangeToModelSteps, toModelStep } from "./modelTime.ts";
import { packInstant } from "./packInstant.ts";
import { packBearing, packSpeed } from "./packNumbers.ts";

type PackPhases = NonNullable<PackSite["phases"]>[number];
type PackSpan = PackPhases["spans"][number];

/**
 * The spans of one day as pack.json holds them: model times on 5 min steps, the day covered without gap or overlap. A spell
 * beside midnight that is too short for a step is left out.
 */
export function packPhases(localDate: string, air: SlopePhases, timezone: string): PackPhases {
  const spans = air.spans
    .map((span) => packSpan(span, air, timezone))
    .filter((span) => span.from !== span.to);
  return {
    localDate,
    spans: spans.map((span, i) => ({
      ...span,
      ...(i === 0 ? { fromRange: null } : {}),
      ...(i === spans.length - 1 ? { toRange: null } : {}),
      why: {
        ...span.why,
        ...(i === 0 ? { fromRange: "midnight" } : {}),
        ...(i === spans.length - 1 ? { toRange: "midnight" } : {}),
      },
    })),
  };
}

function packSpan(span: PhaseSpan, air: SlopePhases, timezone: string): PackSpan {
  return {
    phase: span.phase,
    from: packInstant(insideDay(span.from, air), timezone),
    to: packInstant(insideDay(span.to, air), timezone),
    fromRange: packRange(span.fromRange, timezone),
    toRange: packRange(span.toRange, timezone),
    speedMps: span.speedMps === null ? null : packSpeed(span.speedMps),
    driftToDeg: span.driftToDeg === null ? null : packBearing(span.driftToDeg),
    why: { ...span.why },
  };
}

/** Turns that fewer than 14 of the 17 members have, by the time the plain run gives them. */
export function doubtfulTurns(
  localDate: string,
  air: SlopePhases,
  timezone: string,
): SiteDetails["doubtfulTurns"] {
  return air.spans
    .filter((span) => span.mayNotHappen)
    .map((span) => ({ localDate, at: packInstant(insideDay(span.from, air), timezone) }));
}

export function packRange(range: readonly [Date, Date] | null, timezone: string): [string, string] | null {
  if (range === null) return null;
  const [earliest, latest] = rangeToModelSteps(range);
  return [packInstant(earliest, timezone), packInstant(latest, timezone)];
}

/** Local midnight is no model time: some zones keep offsets that are no whole multiple of 5 min from it. */
function insideDay(at: Date, air: SlopePhases): Date {
  if (at.getTime() === air.start.getTime() || at.getTime() === air.end.getTime()) return at;
  return toModelStep(at);
}
