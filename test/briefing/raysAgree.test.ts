import { expect, test } from "vitest";
import { packContext } from "../../scripts/briefing/composePack.ts";
import { siteShooting } from "../../scripts/briefing/composeShooting.ts";
import { cardWeapon } from "../../scripts/briefing/siteWeapon.ts";
import { rayToGround } from "../../scripts/terrain/rayToGround.ts";
import { demoLoaded } from "../demo/demoJudgement.ts";
import { OPTIONS } from "./composedAreas.ts";

test("ground behind an animal, sampled every 2.5 m, lies where an exact ray over the grid meets it", {
  timeout: 60_000,
}, async () => {
  const { areas, shared } = await demoLoaded();
  const offM: number[] = [];
  let disagree = 0;
  let tooNear = 0;
  for (const area of areas.values()) {
    const context = packContext(area, shared, OPTIONS);
    const { grid } = area.ground!;
    for (const site of area.content.sites) {
      const weapon = cardWeapon(area.content, context.trips, shared.firearms);
      const { lines, rules } = siteShooting(site, context, weapon);
      for (const { bearingDeg, ranges } of lines!) {
        for (const { rangeM, beyondM } of ranges) {
          const { meeting } = rayToGround(grid, {
            from: site.facts.position,
            heightM: site.facts.platformHeightM + rules.muzzleHeightSeatedM,
            bearingDeg,
            aim: { kind: "through", distanceM: rangeM, heightM: rules.aimPointHeightM },
            startsAtM: rangeM,
            reachM: rangeM + rules.backstopFarM,
            groundOffsetM: 0,
          });
          const isWithin = beyondM !== null && beyondM <= rules.backstopFarM;
          if (meeting === null && isWithin) tooNear++;
          else if (meeting !== null && !isWithin) disagree++;
          else if (meeting !== null) offM.push(Math.abs(meeting.distanceM - rangeM - beyondM!));
        }
      }
    }
  }
  offM.sort((a, b) => a - b);
  expect(offM.length).toBeGreaterThan(1500);
  // Heights between samples are straight here and curved there: millimetres, which the rare grazing line stretches to metres.
  expect(offM[Math.floor(offM.length / 2)]!).toBeLessThan(0.01);
  expect(offM[Math.floor(offM.length * 0.99)]!).toBeLessThan(0.2);
  expect(offM.filter((m) => m > 0.5).length).toBeLessThanOrEqual(3);
  // A line that just touches a rise passes over it here, which tells of ground farther behind: never of nearer.
  expect(disagree).toBeLessThanOrEqual(3);
  expect(tooNear).toBe(0);
});
