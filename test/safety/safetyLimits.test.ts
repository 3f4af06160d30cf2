import { expect, test } from "vitest";
import type { ModelRow } from "../../scripts/content/schema/sharedDataSchema.ts";
import { safetyLimits } from "../../scripts/safety/safetyLimits.ts";
import { limits } from "./limits.ts";

const row = (id: string, value: ModelRow["value"]): ModelRow => ({
  id,
  value,
  unit: "-",
  low: null,
  high: null,
  reason: "test",
  status: "choice",
});
const rows = Object.entries(limits).map(([id, value]) => row(id, value));

test("limits are taken from the rows of the model, others are left alone", () => {
  expect(safetyLimits([row("albedo", [0.2, 0.2, 0.2, 0.2]), ...rows])).toEqual(limits);
});

test("a missing or ill-typed row is named", () => {
  expect(() => safetyLimits(rows.filter(({ id }) => id !== "leanStopDeg"))).toThrow(
    "model constant leanStopDeg must be a number, found undefined",
  );
  expect(() =>
    safetyLimits(rows.map((one) => (one.id === "awakeStopH" ? row("awakeStopH", [1]) : one))),
  ).toThrow("awakeStopH");
});
