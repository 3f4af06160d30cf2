import { Body, Observer, SearchAltitude } from "astronomy-engine";
import { describe, expect, test } from "vitest";
import { COVERS } from "../../scripts/content/schema/siteSchema.ts";
import { usableLight } from "../../scripts/light/usableLight.ts";

const constants = {
  usableLightSunDeg: [-5, -4, -3, -2],
  usableLightCloudDeg: 0.5,
  usableLightCloudShare: 0.75,
};
const site = { localDate: "2026-04-04", timezone: "UTC", position: { lat: 45, lon: 0 }, cloudShare: 0 };
const FIVE_MIN = 300_000;

// An independent almanac library gives the instant of the angle; usable light is its next 5 min step inward.
function almanac(sunDeg: number, direction: 1 | -1): number {
  return SearchAltitude(
    Body.Sun,
    new Observer(45, 0, 0),
    direction,
    new Date("2026-04-04T00:00:00Z"),
    1,
    sunDeg,
  )!.date.getTime();
}

describe("usable light at 45 N, 4 April 2026", () => {
  const rows = COVERS.flatMap((cover, at) => [
    { cover, cloudShare: 0.74, sunDeg: [-5, -4, -3, -2][at]! },
    { cover, cloudShare: 0.75, sunDeg: [-4.5, -3.5, -2.5, -1.5][at]! },
  ]);
  test.each(rows)(
    "$cover under cloud $cloudShare begins with the sun at $sunDeg",
    ({ cover, cloudShare, sunDeg }) => {
      const found = usableLight({ ...site, cover, cloudShare }, constants);
      expect(found.sunDeg).toBe(sunDeg);
      expect(found.from?.getTime()).toBe(Math.ceil(almanac(sunDeg, 1) / FIVE_MIN) * FIVE_MIN);
      expect(found.until?.getTime()).toBe(Math.floor(almanac(sunDeg, -1) / FIVE_MIN) * FIVE_MIN);
    },
  );

  test("both sides of the cloud limit and every cover are compared", () => expect(rows.length).toBe(8));
});

test("an unknown cloud takes a clear sky and says so", () => {
  const found = usableLight({ ...site, cover: "open", cloudShare: null }, constants);
  expect(found).toMatchObject({ sunDeg: -5, isCloudAssumed: true });
});

test("in the polar night there is no usable light, with the reason", () => {
  const found = usableLight(
    { ...site, localDate: "2026-12-21", position: { lat: 78, lon: 15 }, cover: "open" },
    constants,
  );
  expect(found).toMatchObject({ from: null, until: null });
  expect(found.why.from).toMatch(/does not climb to 5° below the horizon/);
});

test("a cover without an angle is refused", () => {
  expect(() =>
    usableLight({ ...site, cover: "dense timber" }, { ...constants, usableLightSunDeg: [-5] }),
  ).toThrow(RangeError);
});
