import { expect, test } from "vitest";
import { approachProblems } from "../../scripts/briefing/approachProblems.ts";
import { loadJacksboro } from "./composedAreas.ts";

const fileOf = (path: string) => path;

test("the fixture's approaches all give a sector", async () => {
  const content = (await loadJacksboro()).areas[0]!.content;
  expect(approachProblems(content, fileOf)).toEqual([]);
});

test("an approach whose feature lies beyond its distances is a problem, never left out in silence", async () => {
  const content = (await loadJacksboro()).areas[0]!.content;
  const area = structuredClone(content);
  const site = area.sites[0]!;
  const feature = area.map!.features.find(({ geometry }) => geometry.type === "LineString")!;
  site.facts.approaches = {
    evening: [{ id: "far", along: feature.properties.id, distanceM: [1900, 1901], use: 0.5 }],
  };
  const [problem, ...others] = approachProblems(area, fileOf);
  expect(others).toEqual([]);
  expect(problem).toMatchObject({
    code: "approach-away",
    file: `sites/${site.id}.json`,
    field: "approaches.evening[0].along",
  });
  Object.assign(site.facts.approaches.evening![0]!, { bearingsDeg: [10, 40] });
  expect(approachProblems(area, fileOf)).toEqual([]);
});
