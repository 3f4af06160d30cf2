import type { Cover } from "../content/schema/siteSchema.ts";
import type { Position } from "../geo/position.ts";
import { sunAngleTimes } from "./solarDay.ts";
import { wholeMinutesInside } from "./timeWindows.ts";

export interface UsableLightConstants {
  /** Altitude of the sun at which a site has light to see by, one for each cover: open, edge, timber, dense timber. */
  usableLightSunDeg: readonly number[];
  /** Added under a clouded sky, degrees. */
  usableLightCloudDeg: number;
  /** Cloud share from which the sky counts as clouded, 0 to 1. */
  usableLightCloudShare: number;
}

/** An estimate, on 5 min steps: print it with "about", beside legal light and never merged with it. */
export interface UsableLight {
  from: Date | null;
  until: Date | null;
  sunDeg: number;
  /** True when no cloud was given and a clear sky is taken. */
  isCloudAssumed: boolean;
  why: Record<string, string>;
}

const STEP_MIN = 5;
const COVERS: readonly Cover[] = ["open", "edge", "timber", "dense timber"]; // the order of a row of four constants

/**
 * When there is light enough to see by at a site: the sun at the angle of its cover, higher under cloud, drawn inward to
 * 5 minutes. Level horizon. Does not cover hill shade, snow, moon, glass or the hunter's own eyes.
 *
 * @param cloudShare   0 to 1; null = not known, a clear sky is taken and said
 * @returns            `from` and `until` null with a reason when the sun does not come to the angle
 * @throws {RangeError} when an angle of the cover is missing
 */
export function usableLight(
  site: { localDate: string; timezone: string; position: Position; cover: Cover; cloudShare: number | null },
  constants: UsableLightConstants,
): UsableLight {
  const { localDate, timezone, position, cover, cloudShare } = site;
  const coverDeg = constants.usableLightSunDeg[COVERS.indexOf(cover)];
  if (coverDeg === undefined) throw new RangeError(`usableLightSunDeg has no angle for ${cover}`);
  const isClouded = (cloudShare ?? 0) >= constants.usableLightCloudShare;
  const sunDeg = coverDeg + (isClouded ? constants.usableLightCloudDeg : 0);
  const { climbsAt, sinksAt, why } = sunAngleTimes(localDate, position, timezone, sunDeg);
  const found = { sunDeg, isCloudAssumed: cloudShare === null };
  if (climbsAt === null || sinksAt === null) {
    const from = climbsAt === null ? (why.climbsAt ?? "the sun does not come to the angle") : null;
    const until = sinksAt === null ? (why.sinksAt ?? "the sun does not come to the angle") : null;
    return {
      ...found,
      from: null,
      until: null,
      why: { from: from ?? until ?? "", until: until ?? from ?? "" },
    };
  }
  const [window] = wholeMinutesInside([{ start: climbsAt, end: sinksAt }], STEP_MIN);
  if (window === undefined) {
    const reason = `the light lasts under ${STEP_MIN} minutes`;
    return { ...found, from: null, until: null, why: { from: reason, until: reason } };
  }
  return { ...found, from: window.start, until: window.end, why: {} };
}
