import { describe, expect, test } from "vitest";
import { closedLine, closedWhileInUse } from "../../../scripts/briefing/pages/closedText.ts";

describe("closed bearings in one line", () => {
  test.each([
    {
      given: "a full circle in two halves",
      closed: [
        { fromDeg: 0, toDeg: 180 },
        { fromDeg: 180, toDeg: 0 },
      ],
      line: "Do not shoot on any bearing.",
    },
    {
      given: "two spans",
      closed: [
        { fromDeg: 40, toDeg: 85 },
        { fromDeg: 281, toDeg: 5 },
      ],
      line: "Do not shoot 040 to 085 and 281 to 005.",
    },
    { given: "none", closed: [], line: "No closed bearing was found on the map. Look before every shot." },
    { given: "not worked out", closed: null, line: null },
  ])("$given", ({ closed, line }) => {
    expect(closedLine({ closed })).toBe(line);
  });
});

test("other sites close bearings while in use, their ways are left to the day sheet", () => {
  const row = { fromDeg: 248, toDeg: 279, distanceM: 345 };
  const whileInUse = [
    { ...row, kind: "site" as const, id: "west" },
    { ...row, kind: "walk-in" as const, id: "west/creek" },
  ];
  expect(closedWhileInUse({ whileInUse })).toEqual([{ site: "west", span: "248 to 279", distanceM: 345 }]);
  expect(closedWhileInUse({ whileInUse: null })).toBeNull();
});
