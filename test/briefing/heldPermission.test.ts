import { describe, expect, test } from "vitest";
import { mayBeOn, permissionState } from "../../scripts/briefing/heldPermission.ts";
import { smallContent } from "./smallArea.ts";

const written = (id: string, more: Record<string, unknown> = {}) => ({
  ...{ id, kind: "permit", from: "2026-09-01", to: "2026-12-31", source: "x", checkedOn: "2026-08-01" },
  ...more,
});
const areaWith = (...permission: Record<string, unknown>[]) =>
  smallContent({
    facts: { permission, blocks: [{ id: "east", name: "East", centre: { lat: -45, lon: 168 } }] },
  });

describe("whether a permission holds", () => {
  const [permission] = areaWith(written("a")).facts.permission;
  test.each([
    ["2026-08-31", "not yet"],
    ["2026-09-01", "holds"],
    ["2026-12-31", "holds"],
    ["2027-01-01", "over"],
  ])("on %s: %s", (localDate, state) => {
    expect(permissionState(permission!, localDate)).toBe(state);
  });

  test("one that was taken back never holds, also inside its dates", () => {
    expect(permissionState({ ...permission!, withdrawn: true }, "2026-10-01")).toBe("withdrawn");
    expect(permissionState({ ...permission!, withdrawn: false }, "2026-10-01")).toBe("holds");
  });
});

describe("whether one may be on the ground of a block", () => {
  const day = "2026-10-14";
  test.each([
    ["nothing written: nobody knows", areaWith(), "east", null],
    ["the whole area's speaks for every block", areaWith(written("a")), "east", true],
    ["and for ground of no block", areaWith(written("a")), null, true],
    [
      "the block's own must hold beside the whole area's",
      areaWith(written("a"), written("b", { block: "east", to: "2026-10-01" })),
      "east",
      false,
    ],
    [
      "and leaves other ground alone",
      areaWith(written("a"), written("b", { block: "east", withdrawn: true })),
      null,
      true,
    ],
    ["a block's says nothing of other ground", areaWith(written("b", { block: "east" })), null, null],
    [
      "a renewed one holds beside the one that is over",
      areaWith(written("a", { to: "2026-08-01", from: "2025-09-01" }), written("b")),
      "east",
      true,
    ],
    [
      "and the whole area's beside the block's own",
      areaWith(written("a", { to: "2026-10-01" }), written("b", { block: "east" })),
      "east",
      false,
    ],
    [
      "each kind must hold: a landholder's yes is no permit",
      areaWith(written("a", { to: "2026-10-01" }), written("b", { kind: "landholder" })),
      "east",
      false,
    ],
    [
      "one taken back is not answered by an older one",
      areaWith(written("a", { withdrawn: true, checkedOn: "2026-09-15" }), written("b")),
      "east",
      false,
    ],
    [
      "but by one given afterwards",
      areaWith(written("a", { withdrawn: true, checkedOn: "2026-07-15" }), written("b")),
      "east",
      true,
    ],
    ["withdrawn", areaWith(written("a", { withdrawn: true })), "east", false],
  ])("%s", (_, area, block, expected) => {
    expect(mayBeOn(area, block, day)).toBe(expected);
  });
});
