import { type DriveSeries, sunFactorAt } from "./driveChanges.ts";
import type { EnsembleMember } from "./ensembleMembers.ts";
import { clearNetWm2, directWm2, packedMembers } from "./memberDrive.ts";
import type { AirSpan } from "./memberSpans.ts";
import type { ModelConstants } from "./modelConstants.ts";
import type { SkyCases } from "./skyCases.ts";
import { fallGrowthShare, risingSpeedMps, steadyFallingSpeedMps, steepnessFactor } from "./slopeAirSpeed.ts";
import type { Phase, SlopeSite } from "./slopeSite.ts";
import { emptySunSamples, fillSunSample } from "./sunSamples.ts";

const MINUTE_MS = 60_000;
const PHASES: readonly Phase[] = ["falling", "turning", "rising"];

/** A spell of rising or falling air of one member, and the spell that the model gave before a local note moved it. */
export interface MemberSpan {
  phase: "falling" | "rising";
  fromMs: number;
  toMs: number;
  modelFromMs: number;
  modelToMs: number;
}

/**
 * Phase and speed of the slope air in every member at even steps; row-major, member by member, plain run first. Speeds
 * are in still air: a wind fades them.
 */
export interface MemberAir {
  startMs: number;
  stepMin: number;
  steps: number;
  count: number;
  spans: readonly (readonly MemberSpan[])[];
  /** 0 falling, 1 turning, 2 rising. */
  phase: Uint8Array;
  speedMps: Float64Array;
  /** What the air would do at each step if it rose, and if it fell steadily. */
  ifRisingMps: Float64Array;
  ifFallingMps: Float64Array;
}

/** Speeds if rising and if falling of all members at every step; the phases still to be filled in. */
export function memberAir(
  series: DriveSeries,
  site: SlopeSite,
  spans: readonly (readonly AirSpan[])[],
  table: { startMs: number; steps: number; stepMin: number },
): MemberAir {
  const { members, constants } = series;
  const size = members.length * table.steps;
  const ifRisingMps = new Float64Array(size);
  const ifFallingMps = new Float64Array(size);
  const samples = emptySunSamples(1);
  const packed = packedMembers(members);
  // The members tilt the ground for its sunshine alone: steepness acts on the speed as the site has it.
  const steepness = steepnessFactor(site.landform, site.slopeDeg ?? 0, constants);
  let row = 0;
  for (let step = 0; step < table.steps; step++) {
    const atMs = table.startMs + step * table.stepMin * MINUTE_MS;
    while (row + 1 < series.sky.length && (series.sky[row + 1] as SkyCases).fromMs <= atMs) row++;
    const cases = series.sky[row] as SkyCases;
    fillSunSample(samples, 0, atMs, sunFactorAt(series, atMs), series.sampling);
    for (let m = 0; m < members.length; m++) {
      const member = members[m] as EnsembleMember;
      const direct = directWm2(samples, 0, packed, m);
      const drive = {
        landform: site.landform,
        steepness,
        cover: site.cover,
        clearNetWm2: clearNetWm2(samples, 0, packed, m, direct, cases.clearCoolingWm2, series.albedo),
        globalShare: cases.globalShare[member.cloudCase],
        coolingShare: cases.coolingShare[member.cloudCase],
      };
      ifRisingMps[m * table.steps + step] = risingSpeedMps(drive, constants);
      ifFallingMps[m * table.steps + step] = steadyFallingSpeedMps(drive, constants);
    }
  }
  const inTime = spans.map((own) => spansInTime(own, series.startMs));
  return withSpans({ ...table, count: members.length, ifRisingMps, ifFallingMps }, inTime, constants);
}

/** Spells counted from the start of a series, as instants. */
export function spansInTime(spans: readonly AirSpan[], startMs: number): MemberSpan[] {
  return spans.map((span) => {
    const fromMs = startMs + span.fromMin * MINUTE_MS;
    const toMs = startMs + span.toMin * MINUTE_MS;
    return { phase: span.phase, fromMs, toMs, modelFromMs: fromMs, modelToMs: toMs };
  });
}

/** The same air with other spells: phases and speeds are read anew. */
export function withSpans(
  air: Omit<MemberAir, "spans" | "phase" | "speedMps">,
  spans: readonly (readonly MemberSpan[])[],
  constants: ModelConstants,
): MemberAir {
  const phase = new Uint8Array(air.count * air.steps).fill(1);
  const speedMps = new Float64Array(air.count * air.steps);
  const stepMs = air.stepMin * MINUTE_MS;
  spans.forEach((own, m) => {
    for (const span of own) {
      const first = Math.max(0, Math.ceil((span.fromMs - air.startMs) / stepMs));
      const end = Math.min(air.steps, Math.ceil((span.toMs - air.startMs) / stepMs));
      const modelFirst = Math.max(0, Math.ceil((span.modelFromMs - air.startMs) / stepMs));
      const modelLast = Math.min(air.steps, Math.ceil((span.modelToMs - air.startMs) / stepMs)) - 1;
      for (let step = first; step < end; step++) {
        const place = m * air.steps + step;
        const source = m * air.steps + Math.max(0, Math.min(Math.max(step, modelFirst), modelLast));
        const sinceMin = (air.startMs + step * stepMs - span.fromMs) / MINUTE_MS;
        phase[place] = span.phase === "rising" ? 2 : 0;
        speedMps[place] =
          span.phase === "rising"
            ? (air.ifRisingMps[source] as number)
            : (air.ifFallingMps[source] as number) * fallGrowthShare(sinceMin, constants);
      }
    }
  });
  return { ...air, spans, phase, speedMps };
}

/** The step that holds an instant. @throws {RangeError} an instant outside the table */
export function stepAt(air: MemberAir, at: Date): number {
  const step = Math.floor((at.getTime() - air.startMs) / (air.stepMin * MINUTE_MS));
  if (!(step >= 0 && step < air.steps)) {
    throw new RangeError(`at must lie inside the computed air, found ${at.toISOString()}`);
  }
  return step;
}

/** Phase and still-air speed of one member at an instant; member 0 is the plain run. */
export function memberAirAt(air: MemberAir, member: number, at: Date): { phase: Phase; speedMps: number } {
  if (!(Number.isInteger(member) && member >= 0 && member < air.count)) {
    throw new RangeError(`member must be 0 to ${air.count - 1}, found ${member}`);
  }
  const place = member * air.steps + stepAt(air, at);
  return { phase: PHASES[air.phase[place] as number] as Phase, speedMps: air.speedMps[place] as number };
}
