import { driveChanges } from "./driveChanges.ts";
import type { EnsembleMember } from "./ensembleMembers.ts";
import { type AirSpan, memberSpans } from "./memberSpans.ts";
import { driveSeries, type SlopeAirQuestion } from "./slopeAirDay.ts";

/**
 * The spells of rising and falling air of every member over a long stretch, such as a year, to the minute. A shadow or a beam
 * shorter than the steps of the sun table can be missed, unlike in `slopeAirDay`.
 *
 * @param question `dayStart` and `dayEnd` are the ends of the stretch, `dayOfYear` is that of its first day
 * @returns one list for each member, plain run first; minutes from `startsAt`
 */
export function slopeAirYear(question: SlopeAirQuestion): { startsAt: Date; spans: AirSpan[][] } {
  const series = driveSeries(question, question.sun.stepMin);
  const spans = driveChanges(series, false).map((changes, m) =>
    memberSpans(changes, series.members[m] as EnsembleMember, series.minutes, question.constants),
  );
  return { startsAt: new Date(series.startMs), spans };
}
