import { join } from "node:path";
import { type ModelConstants, modelConstants } from "../air/modelConstants.ts";
import { slopeAirYear } from "../air/slopeAirYear.ts";
import { CLEAR_SKY, type SlopeSite } from "../air/slopeSite.ts";
import type { LoadedArea } from "../briefing/loadedArea.ts";
import { siteGround, slopeSite } from "../briefing/siteGround.ts";
import { type SunTable, sunTable } from "../light/sunTable.ts";
import { loadAreas } from "../publish/loadAreas.ts";
import { projectFolders } from "../publish/projectFolders.ts";
import { addDays, startOfDay } from "../time/civilTime.ts";
import { type Measured, median, shown } from "./measured.ts";

const FIRST_DAY = "2027-01-01";
const DAYS = 365;
const STEP_MIN = 5;
const MINUTE_MS = 60_000;
const RUN_OUT_MIN = 240;
const TIMES = 15;
const PHASES_GOAL_MS = 50;
const SUN_GOAL_MS = 200;

/**
 * Time to compute a year of an area's sun and the phases of one site under it, with all runs of the ensemble, on one core.
 *
 * @throws {Error} when the content has no site with a slope
 */
export async function yearOfOneSite(): Promise<Measured[]> {
  const { areas, shared } = await loadAreas(join(projectFolders.root, "content"), projectFolders.data, null);
  const constants = modelConstants(shared.model);
  const { area, site } = slopingSite(areas, constants);
  const { centre, timezone } = area.content.facts;
  const dayStart = startOfDay(FIRST_DAY, timezone);
  const dayEnd = startOfDay(addDays(FIRST_DAY, DAYS), timezone);
  const sunFrom = new Date(dayStart.getTime() - constants.runInMin * MINUTE_MS);
  const sunMin = (dayEnd.getTime() - sunFrom.getTime()) / MINUTE_MS + RUN_OUT_MIN;
  const rows = Math.ceil(sunMin / STEP_MIN) + 1;

  const sunOf = (): SunTable => sunTable(centre, sunFrom, STEP_MIN, rows);
  const sun = sunOf();
  const phasesOf = () =>
    slopeAirYear({ site, sun, dayStart, dayEnd, dayOfYear: 1, weather: CLEAR_SKY, constants });
  const { spans } = phasesOf();
  const [phasesMs, sunMs] = [timesMs(phasesOf), timesMs(sunOf)];
  return [
    {
      what: "A year of phases of one site",
      figure: Math.min(...phasesMs),
      unit: "ms",
      goal: PHASES_GOAL_MS,
      how: `${DAYS} days in steps of ${STEP_MIN} min, ${spans.length} runs of the model; ${timesText(phasesMs)}`,
    },
    {
      what: "A year of an area's sun",
      figure: Math.min(...sunMs),
      unit: "ms",
      goal: SUN_GOAL_MS,
      how: `${rows} positions in steps of ${STEP_MIN} min; ${timesText(sunMs)}`,
    },
  ];
}

function slopingSite(
  areas: readonly LoadedArea[],
  constants: ModelConstants,
): { area: LoadedArea; site: SlopeSite } {
  for (const area of areas) {
    for (const content of area.content.sites) {
      const ground = siteGround(content, area.ground, area.content.facts.elevationM ?? null, constants);
      const { site } = slopeSite(content, ground);
      if (site?.landform === "slope") return { area, site };
    }
  }
  throw new Error("no site of the content has a slope to compute");
}

/** Times of several runs after two that are not counted. */
function timesMs(work: () => unknown): number[] {
  work();
  work();
  return Array.from({ length: TIMES }, () => {
    const startedMs = performance.now();
    work();
    return performance.now() - startedMs;
  });
}

function timesText(ms: readonly number[]): string {
  return `least of ${ms.length}, what others on the machine do only adds; median ${shown(median(ms))} ms`;
}
