import { expect, test } from "vitest";
import { checkedPages } from "../../scripts/publish/pages.ts";

test("two pages with one permalink are refused, since one would be lost", () => {
  expect(() =>
    checkedPages({ index: [{ permalink: "index.html" }], area: [{ permalink: "index.html" }] }),
  ).toThrow('found "index.html" for pages of kind "index" and "area"');
});

test("permalinks of the output tree pass", () => {
  const pages = {
    index: [{ permalink: "index.html" }],
    day: [{ permalink: "areas/larch-valley/trips/april/day-2026-04-04.html" }],
    almanacMonth: [{ permalink: "areas/larch-valley/almanac-01.html" }],
  };
  expect(checkedPages(pages)).toBe(pages);
});
