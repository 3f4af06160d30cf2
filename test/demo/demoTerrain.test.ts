import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { type ModelRow, modelConstants } from "../../scripts/air/modelConstants.ts";
import { terrainRules } from "../../scripts/briefing/terrainRules.ts";
import { areaFile } from "../../scripts/content/schema/areaSchema.ts";
import { siteFile } from "../../scripts/content/schema/siteSchema.ts";
import { demoAreas } from "../../scripts/demo/demoAreas.ts";
import { signedDifferenceDeg } from "../../scripts/geo/bearings.ts";
import { gridConvergenceDeg } from "../../scripts/geo/utm.ts";
import { broadSlope } from "../../scripts/terrain/broadSlope.ts";
import { elevationAtPosition } from "../../scripts/terrain/elevationGrid.ts";
import { readElevationGrid } from "../../scripts/terrain/readElevationGrid.ts";
import { areaFolder, readJson } from "./demoContent.ts";

const model = JSON.parse(readFileSync(join(areaFolder("."), "../../data/model.json"), "utf8")) as ModelRow[];
const rules = terrainRules(modelConstants(model));
const readingRules = { sideMax: 6000, holeCellsMax: 9, holeShareMax: 0.05, keepWithinM: null };

describe.each(demoAreas)("$id", (area) => {
  const folder = areaFolder(area.id);
  const { centre } = areaFile.parse(readJson(folder, "area.json"));
  const gridRead = readElevationGrid(join(folder, area.terrain), centre, readingRules);

  test("lies on its own UTM grid, a post every 10 m, with a 1 km apron round the 4 km box", async () => {
    const { zone, westM, northM, rows, columns, cellSizeM } = await gridRead;
    const { corner } = area;
    expect({ zone, westM, northM, rows, columns, cellSizeM }).toEqual({
      zone: corner.zone,
      westM: corner.eastingM - 1000,
      northM: corner.northingM + 5000,
      rows: 601,
      columns: 601,
      cellSizeM: 10,
    });
  });

  test.each(area.sites)("$id stands on the ground of the site table", async (site) => {
    const grid = await gridRead;
    const { position } = siteFile.parse(readJson(folder, `sites/${site.id}.json`));
    // Tolerances of the demonstration itself: 8 m, 3 degrees, 20 degrees where the slope is 5 or more.
    expect(Math.abs(elevationAtPosition(grid, position)! - site.ground.heightM)).toBeLessThanOrEqual(8);
    const { slope } = broadSlope(grid, position, rules);
    expect(Math.abs(slope!.slopeDeg - site.ground.slopeDeg)).toBeLessThanOrEqual(3);
    if (site.ground.facingDeg !== null && site.ground.slopeDeg >= 5) {
      const facingDeg = site.ground.facingDeg + gridConvergenceDeg(position, grid.zone);
      expect(Math.abs(signedDifferenceDeg(slope!.aspectDeg!, facingDeg))).toBeLessThanOrEqual(20);
    }
  });

  test("has the hole it was given, filled and counted, and no other", async () => {
    const { source } = await gridRead;
    const cells = area.hole === null ? 0 : 9;
    expect(source).toMatchObject({ voids: cells, filledCells: cells });
  });
});

test("turns grid bearings to true by the convergence of each box", () => {
  // figures of the demonstration, to their last digit: -1.9 and -0.8 degrees
  const convergences = demoAreas.map((area) => {
    const { centre } = areaFile.parse(readJson(areaFolder(area.id), "area.json"));
    return gridConvergenceDeg(centre, area.corner.zone);
  });
  expect(convergences[0]).toBeCloseTo(-1.9, 1);
  expect(convergences[1]).toBeCloseTo(-0.8, 1);
});
