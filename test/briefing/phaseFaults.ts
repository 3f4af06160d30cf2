import type { PackFile, PackSite } from "../../scripts/content/schema/packSchema.ts";
import { endOfDay, startOfDay } from "../../scripts/time/civilTime.ts";

const STEP_MS = 5 * 60_000;

type Span = NonNullable<PackSite["phases"]>[number]["spans"][number];

/** Faults in the phases of a site: days that are missing, spans that do not cover their day, times off their steps or ranges. */
export function phaseFaults(site: PackSite, { area: { timezone }, year, tableDate }: PackFile): string[] {
  if (site.phases === null) return [];
  const days = site.phases.map((day) => day.localDate);
  const faults = days.join() === days.toSorted().join() ? [] : [`${site.id} phases: not by date`];
  const months = Array.from({ length: 12 }, (_, i) => `${year}-${String(i + 1).padStart(2, "0")}`);
  for (const day of [...months.flatMap((month) => [`${month}-01`, `${month}-16`]), tableDate]) {
    if (!days.includes(day)) faults.push(`${site.id} phases: ${day} is missing`);
  }
  for (const { localDate, spans } of site.phases) {
    const day = {
      startMs: startOfDay(localDate, timezone).getTime(),
      endMs: endOfDay(localDate, timezone).getTime(),
    };
    const found = [...coverFaults(spans, day), ...spans.flatMap((span) => spanFaults(span, day))];
    faults.push(...found.map((fault) => `${site.id} phases ${localDate}: ${fault}`));
  }
  return faults;
}

interface Day {
  startMs: number;
  endMs: number;
}

function coverFaults(spans: readonly Span[], day: Day): string[] {
  const faults: string[] = [];
  let reachedMs = day.startMs;
  spans.forEach((span, i) => {
    const before = spans[i - 1]?.phase;
    if (Date.parse(span.from) !== reachedMs) faults.push(`gap or overlap at ${span.from}`);
    if (before === span.phase) faults.push(`${span.phase} twice at ${span.from}`);
    if (before !== undefined && before !== "turning" && span.phase !== "turning")
      faults.push(`${before} and ${span.phase} touch at ${span.from}`);
    reachedMs = Date.parse(span.to);
  });
  return reachedMs === day.endMs ? faults : [...faults, `ends at ${spans.at(-1)?.to}`];
}

function spanFaults(span: Span, { startMs, endMs }: Day): string[] {
  const [from, to] = [Date.parse(span.from), Date.parse(span.to)];
  const isTurning = span.phase === "turning";
  return [
    ...(to > from ? [] : [`an empty span at ${span.from}`]),
    ...(to === endMs || to % STEP_MS === 0 ? [] : [`${span.to} is on no step of 5 minutes`]),
    ...rangeFaults(span.fromRange, span.from),
    ...rangeFaults(span.toRange, span.to),
    ...((span.fromRange === null) === (from === startMs) ? [] : [`the range of ${span.from}`]),
    ...((span.toRange === null) === (to === endMs) ? [] : [`the range of ${span.to}`]),
    ...(isTurning === (span.speedMps === null) ? [] : [`the speed of ${span.from}`]),
    ...(isTurning && span.driftToDeg !== null ? [`a drift while turning at ${span.from}`] : []),
  ];
}

/** A range stands on whole steps and holds its time. */
export function rangeFaults(range: readonly [string, string] | null, held: string): string[] {
  if (range === null) return [];
  const [earliest, latest] = [Date.parse(range[0]), Date.parse(range[1])];
  const at = Date.parse(held);
  const isOnSteps = earliest % STEP_MS === 0 && latest % STEP_MS === 0;
  return [
    ...(isOnSteps ? [] : [`the range of ${held} is on no steps of 5 minutes`]),
    ...(earliest <= at && at <= latest ? [] : [`the range of ${held} does not hold it`]),
  ];
}
