import { normalizeDeg } from "../geo/bearings.ts";
import { type DriveSeries, driveChanges, sunFactorAt } from "./driveChanges.ts";
import { type EnsembleMember, ensembleMembers } from "./ensembleMembers.ts";
import { type MemberAir, memberAir, spansInTime } from "./memberAir.ts";
import { directWm2, packedMembers } from "./memberDrive.ts";
import { type AirSpan, memberSpans } from "./memberSpans.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { type AirDirections, type PhaseSpan, phaseSpans } from "./phaseSpans.ts";
import { skyCases } from "./skyCases.ts";
import type { AirWeather, SlopeSite, SunTable, WeatherRow } from "./slopeSite.ts";
import { clearanceDegAt, emptySunSamples, fillSunSample, sunSampling } from "./sunSamples.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;
const STEP_MIN = 5;
const RUN_OUT_MIN_MS = HOUR_MS;
const RUN_OUT_MAX_MS = 4 * HOUR_MS;

export interface SlopeAirQuestion {
  site: SlopeSite;
  /** Must reach from 10 h before `dayStart` to 1 h after `dayEnd`; 4 h after where sessions run past midnight. */
  sun: SunTable;
  dayStart: Date;
  dayEnd: Date;
  dayOfYear: number;
  weather: AirWeather | readonly WeatherRow[];
  constants: ModelConstants;
}

/** The phases of the slope air of one site on one local day. */
export interface SlopePhases {
  start: Date;
  end: Date;
  spans: readonly PhaseSpan[];
  directions: AirDirections;
  /** First minute with clear-sky beam on the slope by its own skyline, and the minute after the last; null without any. */
  sunOn: Date | null;
  sunLeaves: Date | null;
  /** Why the day has no rising or no falling air, or no sun on the slope. */
  why: Partial<Record<"rising" | "falling" | "sunOn" | "sunLeaves", string>>;
}

/** The slope air of one site on one local day, with phase and speed in every member of the ensemble. */
export interface SlopeAirDay extends SlopePhases {
  members: MemberAir;
}

/**
 * Phase and speed of the slope air through a local day: the plain run and the ensemble, in steps of one minute. Crest
 * and flat ground have phases but no slope air of their own; a valley floor has the slower along-valley air. Snow, wet
 * ground, leaf fall, storms, sea breeze and air under a closed crown by day are not modelled.
 *
 * @throws {RangeError} an unknown slope or aspect, a sun table that is too short, weather out of range
 */
export function slopeAirDay(question: SlopeAirQuestion): SlopeAirDay {
  const series = driveSeries(question, STEP_MIN);
  const spans = spansOf(series);
  const members = memberAir(series, question.site, spans, tableOf(series));
  return { ...phasesOf(members, question, series), members };
}

/**
 * The phases of a local day alone, as {@link slopeAirDay} gives them: of the members only the plain run has speeds, which
 * takes half the time.
 */
export function slopePhases(question: SlopeAirQuestion): SlopePhases {
  const series = driveSeries(question, STEP_MIN);
  const spans = spansOf(series);
  const plainSeries = { ...series, members: series.members.slice(0, 1) };
  const plain = memberAir(plainSeries, question.site, spans.slice(0, 1), tableOf(series));
  return phasesOf(
    { ...plain, spans: spans.map((own) => spansInTime(own, series.startMs)) },
    question,
    series,
  );
}

function spansOf(series: DriveSeries): AirSpan[][] {
  return driveChanges(series).map((changes, m) =>
    memberSpans(changes, series.members[m] as EnsembleMember, series.minutes, series.constants),
  );
}

/** The steps at which speeds are kept: from halfway through the run-in to the end of the series. */
function tableOf(series: DriveSeries): { startMs: number; steps: number; stepMin: number } {
  const { runInMin, stepMin } = series.constants;
  const startMs = series.startMs + (runInMin * MINUTE_MS) / 2;
  const lengthMs = series.startMs + series.minutes * MINUTE_MS - startMs;
  return { startMs, steps: Math.floor(lengthMs / (stepMin * MINUTE_MS)) + 1, stepMin };
}

/** The stretch that is stepped through for a question; see `DriveSeries`. */
export function driveSeries(question: SlopeAirQuestion, stepMin: number): DriveSeries {
  const { site, sun, constants } = question;
  const dayStartMs = question.dayStart.getTime();
  const dayEndMs = question.dayEnd.getTime();
  if (!(dayEndMs > dayStartMs)) throw new RangeError("dayEnd must be after dayStart");
  const startMs = dayStartMs - constants.runInMin * MINUTE_MS;
  const sunEndMs = sun.startsAt.getTime() + (sun.altitudeDeg.length - 1) * sun.stepMin * MINUTE_MS;
  if (sun.startsAt.getTime() > startMs || sunEndMs < dayEndMs + RUN_OUT_MIN_MS) {
    throw new RangeError(
      `sun must reach from ${constants.runInMin / 60} h before dayStart to 1 h after dayEnd, found ${sun.startsAt.toISOString()} to ${new Date(sunEndMs).toISOString()}`,
    );
  }
  const endMs = Math.min(sunEndMs, dayEndMs + RUN_OUT_MAX_MS);
  return {
    startMs,
    minutes: Math.floor((endMs - startMs) / (stepMin * MINUTE_MS)) * stepMin,
    stepMin,
    dayOfYear: question.dayOfYear,
    dayStartMs,
    albedo: constants.albedo[site.cover],
    sampling: sunSampling(site, sun, constants),
    sky: skyCases(question.weather, constants),
    members: ensembleMembers(site, constants),
    constants,
  };
}

/** Where falling and rising air goes at a site. */
export function airDirections(site: SlopeSite): AirDirections {
  const none = (why: string): AirDirections => ({ fallToDeg: null, riseToDeg: null, why });
  if (site.landform === "crest" || site.landform === "flat")
    return none("level ground has no slope air of its own");
  const fallToDeg = site.landform === "floor" ? site.floorDriftToDeg : site.aspectDeg;
  if (fallToDeg === null) return none("which way the cold air leaves is not known");
  return { fallToDeg: normalizeDeg(fallToDeg), riseToDeg: normalizeDeg(fallToDeg + 180), why: null };
}

function phasesOf(members: MemberAir, question: SlopeAirQuestion, series: DriveSeries): SlopePhases {
  const day = { start: question.dayStart, end: question.dayEnd };
  const directions = airDirections(question.site);
  const spans = phaseSpans(members, day, directions, question.constants);
  const { sunOn, sunLeaves } = sunOnSlope(series, day.start.getTime(), day.end.getTime());
  const why: SlopeAirDay["why"] = {};
  if (!sunOn) {
    why.sunOn = "no sun reaches the slope this day";
    why.sunLeaves = why.sunOn;
  }
  if (!spans.some((s) => s.phase === "rising")) {
    why.rising = `${sunOn ? "too little sun on the slope for the air to rise" : "no sun reaches the slope"}${others("rising", members, day)}`;
  }
  if (!spans.some((s) => s.phase === "falling")) {
    const isCloudy = series.sky.some((s) => s.coolingShare[0] < question.constants.coolingShareMin);
    why.falling = `${isCloudy ? "cloud: the slope air hardly moves" : "the slope does not cool enough for the air to fall"}${others("falling", members, day)}`;
  }
  return { ...day, spans, directions, sunOn, sunLeaves, why };
}

function others(phase: "rising" | "falling", members: MemberAir, day: { start: Date; end: Date }): string {
  const have = members.spans.filter((own) =>
    own.some((s) => s.phase === phase && s.toMs > day.start.getTime() && s.fromMs < day.end.getTime()),
  ).length;
  return have > 0 ? `; ${have} of ${members.spans.length} runs have some` : "";
}

function sunOnSlope(
  series: DriveSeries,
  startMs: number,
  endMs: number,
): { sunOn: Date | null; sunLeaves: Date | null } {
  const plain = series.members[0] as EnsembleMember;
  const samples = emptySunSamples(1);
  const packed = packedMembers([plain]);
  const isOn = (ms: number): boolean =>
    clearanceDegAt(ms, series.sampling) >= plain.horizonShiftDeg &&
    fillSunSample(samples, 0, ms, sunFactorAt(series, ms), series.sampling) &&
    directWm2(samples, 0, packed, 0) > 0;
  let first = startMs;
  while (first < endMs && !isOn(first)) first += MINUTE_MS;
  if (first >= endMs) return { sunOn: null, sunLeaves: null };
  let last = endMs - MINUTE_MS;
  while (!isOn(last)) last -= MINUTE_MS;
  return { sunOn: new Date(first), sunLeaves: new Date(last + MINUTE_MS) };
}
