import type { Position } from "../../scripts/geo/position.ts";
import { almanacSun } from "../published/almanac.ts";

// The slope air of one clear day, written anew from its formulas, with its numbers typed in: a plain loop of minutes over 17 runs,
// sun from an independent almanac. It shares no code and no data file with the program.

const RADIAN = Math.PI / 180;
const MINUTE_MS = 60_000;

export type Phase = "falling" | "turning" | "rising";

export interface HandSite {
  position: Position;
  elevationM: number;
  slopeDeg: number;
  aspectDeg: number;
  /** 360 angles of the skyline */
  horizonDeg: readonly number[];
  dayOfYear: number;
}

/** Numbers of a cover: open ground and edge of the wood. */
export interface HandCover {
  albedo: number;
  riseLagMin: number;
  fallLagMin: number;
  slopeAirCover: number;
}

/** One run, minute by minute from `startMs`: its phase and the speed of its slope air in still air. */
export interface HandRun {
  startMs: number;
  phase: Phase[];
  speedMps: number[];
}

interface Run {
  cloud: number;
  longwave: number;
  slope: number;
  aspectDeg: number;
  lag: number;
  riseNetWm2: number;
  fallNetWm2: number;
  horizonDeg: number;
  transmittance: number;
}

const PLAIN: Run = {
  ...{ cloud: 0, longwave: 1, slope: 1, aspectDeg: 0, lag: 1 },
  ...{ riseNetWm2: 25, fallNetWm2: 40, horizonDeg: 0, transmittance: 0.7 },
};

/** Sixteen runs, a two-level design of resolution four: A to D are the bits of the number, E = BCD, F = ACD, G = ABC, H = ABD. */
function designed(): Run[] {
  return Array.from({ length: 16 }, (_, i) => {
    const [a, b, c, d] = [1, 2, 4, 8].map((bit) => ((i & bit) === 0 ? -1 : 1)) as [
      number,
      number,
      number,
      number,
    ];
    const isLate = a * c * d > 0;
    return {
      cloud: a > 0 ? 0.15 : 0, // a clear sky can only get more
      longwave: b > 0 ? 1.15 : 0.85,
      slope: c > 0 ? 1.2 : 0.8,
      aspectDeg: 15 * d,
      lag: b * c * d > 0 ? 1.6 : 0.6,
      riseNetWm2: isLate ? 50 : 10,
      fallNetWm2: isLate ? 20 : 60,
      horizonDeg: 0.7 * a * b * c,
      transmittance: a * b * d > 0 ? 0.74 : 0.66,
    };
  });
}

/** The plain run and the sixteen others, from ten hours before the start of the day to its end. */
export function handRuns(site: HandSite, cover: HandCover, dayStart: Date, dayEnd: Date): HandRun[] {
  const startMs = dayStart.getTime() - 600 * MINUTE_MS;
  const minutes = (dayEnd.getTime() - startMs) / MINUTE_MS;
  const suns = Array.from({ length: minutes }, (_, minute) =>
    apparentSun(new Date(startMs + minute * MINUTE_MS), site.position),
  );
  return [PLAIN, ...designed()].map((run) => {
    const heat = suns.map((sun) => heatOf(sun, site, cover, run));
    const phase = phasesOf(heat, cover, run);
    const steep = Math.min(1.15, Math.cbrt(Math.sin(site.slopeDeg * RADIAN) / Math.sin(20 * RADIAN)));
    let fallingMin = 0;
    const speedMps = phase.map((now, minute) => {
      fallingMin = now === "falling" ? fallingMin + 1 : 0;
      const clearNet = heat[minute]!.clearNetWm2;
      if (now === "turning") return 0;
      if (now === "rising")
        return (
          2.2 * Math.cbrt(between(clearNet / 450, 0, 1.2)) * steep * cover.slopeAirCover * skyShare(run.cloud)
        );
      const grown = Math.min(1, 0.4 + (0.6 * (fallingMin - 1)) / 90);
      const cooling = Math.cbrt(between((40 - clearNet) / 115, 0, 1.2));
      return 1.3 * cooling * steep * cover.slopeAirCover * coolingShare(run.cloud) * grown;
    });
    return { startMs, phase, speedMps };
  });
}

const between = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
const skyShare = (cloud: number): number => 1 - 0.75 * cloud ** 3.4;
const coolingShare = (cloud: number): number => between(1.35 * skyShare(cloud) - 0.35, 0.05, 1);

interface Sun {
  altitudeDeg: number;
  azimuthDeg: number;
}

/** Refraction by Saemundsson 1986, Sky and Telescope 72:70: 0.48 degrees at the horizon. */
function apparentSun(at: Date, position: Position): Sun {
  const { airlessDeg: h, azimuthDeg } = almanacSun(at, position);
  const bentDeg = h > -1 ? 1.02 / Math.tan((h + 10.3 / (h + 5.11)) * RADIAN) / 60 : 0;
  return { altitudeDeg: h + bentDeg, azimuthDeg };
}

interface Heat {
  direct0Wm2: number;
  clearNetWm2: number;
  netWm2: number;
}

function heatOf({ altitudeDeg: h, azimuthDeg }: Sun, site: HandSite, cover: HandCover, run: Run): Heat {
  const s = site.slopeDeg * run.slope * RADIAN;
  const sky = (1 + Math.cos(s)) / 2;
  const ea = 0.7 * 0.6108 * Math.exp((17.27 * 10) / (10 + 237.3)); // 10 C, 70 %
  const loss = 5.670374e-8 * 283.15 ** 4 * (0.34 - 0.14 * Math.sqrt(ea)) * sky * run.longwave;
  const cloudLoss = loss * coolingShare(run.cloud);
  if (h <= 0) return { direct0Wm2: 0, clearNetWm2: -loss, netWm2: -cloudLoss };
  const sinH = Math.sin(h * RADIAN);
  const r = 1 + 0.033 * Math.cos((2 * Math.PI * site.dayOfYear) / 365);
  const mass = Math.exp(-site.elevationM / 8435) / (sinH + 0.50572 * (h + 6.07995) ** -1.6364);
  const beam = 1361 * r * run.transmittance ** (mass ** 0.678);
  const global = 1098 * r * sinH * Math.exp(-0.059 / sinH);
  const diffuse = Math.max(global - beam * sinH, 0.06 * global);
  const turn = (azimuthDeg - site.aspectDeg - run.aspectDeg) * RADIAN;
  const cosI = Math.cos(s) * sinH + Math.sin(s) * Math.cos(h * RADIAN) * Math.cos(turn);
  const isOn = cosI > 0 && h >= skylineDeg(site.horizonDeg, azimuthDeg) + run.horizonDeg;
  const direct0Wm2 = isOn ? beam * cosI : 0;
  const left = 1 - run.cloud;
  const cloudSky = Math.max(0, (beam * sinH + diffuse) * skyShare(run.cloud) - beam * left * sinH);
  return {
    direct0Wm2,
    clearNetWm2: (1 - cover.albedo) * (direct0Wm2 + sky * diffuse) - loss,
    netWm2: (1 - cover.albedo) * (direct0Wm2 * left + sky * cloudSky) - cloudLoss,
  };
}

function skylineDeg(horizonDeg: readonly number[], azimuthDeg: number): number {
  const whole = Math.floor(azimuthDeg);
  const share = azimuthDeg - whole;
  return horizonDeg[whole % 360]! * (1 - share) + horizonDeg[(whole + 1) % 360]! * share;
}

function phasesOf(heat: readonly Heat[], cover: HandCover, run: Run): Phase[] {
  let rose = 0;
  let fell = 0;
  const lag = run.lag * (1 + run.cloud);
  const phase = heat.map(({ direct0Wm2, clearNetWm2, netWm2 }, minute): Phase => {
    const isRise = Math.min(netWm2, clearNetWm2) >= run.riseNetWm2 && direct0Wm2 >= 20;
    const isFall = clearNetWm2 <= run.fallNetWm2 && direct0Wm2 < 20 && coolingShare(run.cloud) >= 0.15;
    // what holds when the run begins is taken to have held for long
    rose = isRise ? rose + (minute === 0 ? 1000 : 1) : 0;
    fell = isFall ? fell + (minute === 0 ? 1000 : 1) : 0;
    if (rose > cover.riseLagMin * lag) return "rising";
    return fell > cover.fallLagMin * lag ? "falling" : "turning";
  });
  // breaks under 10 min inside one phase are closed, then rising and falling under 20 min become turning
  return withoutShort(withoutShort(phase, "turning", 10, true), null, 20, false);
}

function withoutShort(
  phase: readonly Phase[],
  only: Phase | null,
  least: number,
  isFilled: boolean,
): Phase[] {
  const result = [...phase];
  for (let from = 0; from < result.length; ) {
    let to = from;
    while (to < result.length && result[to] === result[from]) to++;
    const [before, own, after] = [result[from - 1], result[from]!, result[to]];
    const isInside = before !== undefined && after !== undefined;
    if (isInside && to - from < least && (only === null ? own !== "turning" : own === only)) {
      if (!isFilled) result.fill("turning", from, to);
      else if (before === after) result.fill(before, from, to);
    }
    from = to;
  }
  return result;
}
