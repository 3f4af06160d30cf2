import type { HandRun, Phase } from "./handAir.ts";

// Drift and chance of one wind at one site, written anew from their formulas with their numbers typed in.

const RADIAN = Math.PI / 180;
const MINUTE_MS = 60_000;

export interface HandWind {
  fromDeg: number;
  openMps: number;
  /** greatest upwind slope for this wind */
  sxDeg: number;
}

/** What the wind and the slope air do at open ground or at the edge of a wood. */
export interface HandExposure {
  windCover: number;
  meanderMps: number;
  turbulenceShare: number;
  slopeAirCover: number;
  aspectDeg: number;
}

export interface HandApproach {
  fromDeg: number;
  widthDeg: number;
  use: number;
}

export interface HandCell {
  driftToDeg: number;
  driftSpeedMps: number;
  reachShare: number;
  verdict: string;
}

/** Mean over all runs and all 5 min steps of a session in which a run has the phase; null where no run has it. */
export function handCell(
  runs: readonly HandRun[],
  phase: Phase,
  session: { fromMs: number; toMs: number },
  wind: HandWind,
  exposure: HandExposure,
  approach: HandApproach,
): HandCell | null {
  let [count, east, north, share, anyWay] = [0, 0, 0, 0, 0];
  for (const run of runs) {
    for (let ms = session.fromMs; ms < session.toMs; ms += 5 * MINUTE_MS) {
      const minute = (ms - run.startMs) / MINUTE_MS;
      if (run.phase[minute] !== phase) continue;
      const drift = driftOf(run.speedMps[minute]!, phase, wind, exposure);
      count++;
      east += drift.east;
      north += drift.north;
      share += approach.use * sectorChance(drift, approach.fromDeg - 10, approach.widthDeg + 20);
      const speed = Math.hypot(drift.east, drift.north);
      if (speed / drift.sigma < 1.28 || speed < 0.3 || wind.openMps < 0.5) anyWay++;
    }
  }
  if (count === 0) return null;
  const reachShare = share / count;
  const isAnyWay = anyWay > count / 2;
  return {
    driftToDeg: (Math.atan2(east, north) / RADIAN + 360) % 360,
    driftSpeedMps: Math.hypot(east, north) / count,
    reachShare,
    verdict: reachShare >= 0.35 ? "avoid" : reachShare >= 0.1 || isAnyWay ? "marginal" : "suits",
  };
}

interface Normal {
  east: number;
  north: number;
  sigma: number;
}

function driftOf(stillMps: number, phase: Phase, wind: HandWind, e: HandExposure): Normal {
  const shelter = Math.min(1.3, Math.max(0.4, 1 - 0.025 * wind.sxDeg));
  const fade = Math.min(1, Math.max(0, (7 - wind.openMps * shelter) / 5));
  const w = e.windCover * shelter * wind.openMps;
  const s = phase === "turning" ? 0 : stillMps * fade;
  const windTo = (wind.fromDeg + 180) * RADIAN;
  const airTo = (phase === "rising" ? e.aspectDeg + 180 : e.aspectDeg) * RADIAN;
  const variance =
    e.meanderMps ** 2 +
    (1.0 * e.windCover * shelter) ** 2 +
    (e.turbulenceShare * w) ** 2 +
    (0.35 * s) ** 2 +
    (phase === "turning" ? (0.4 * e.slopeAirCover * fade) ** 2 : 0) +
    (wind.sxDeg >= 15 && wind.openMps >= 4 ? (0.5 * e.windCover * wind.openMps) ** 2 : 0);
  return {
    east: w * Math.sin(windTo) + s * Math.sin(airTo),
    north: w * Math.cos(windTo) + s * Math.cos(airTo),
    sigma: Math.max(0.2, Math.sqrt(variance)),
  };
}

/**
 * Chance that a two-dimensional normal wind blows into a sector: for each degree the integral over its speed, summed by hand.
 * No closed form is used.
 */
function sectorChance({ east, north, sigma }: Normal, fromDeg: number, widthDeg: number): number {
  const [x, y] = [east / sigma, north / sigma];
  const stepR = 0.1;
  let sum = 0;
  for (let deg = 0.5; deg < widthDeg; deg++) {
    const angle = (fromDeg + deg) * RADIAN;
    const along = x * Math.sin(angle) + y * Math.cos(angle);
    const off2 = x * x + y * y - along * along;
    for (let r = stepR / 2; r < Math.max(0, along) + 6; r += stepR)
      sum += r * Math.exp(-((r - along) ** 2 + off2) / 2) * stepR * RADIAN;
  }
  return sum / (2 * Math.PI);
}
