import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { readSharedData } from "../../scripts/content/readSharedData.ts";
import { told } from "./contentFolder.ts";

const dataDir = fileURLToPath(new URL("../../data", import.meta.url));
const reading = { root: dataDir, problems: [], sourceFiles: [] };
const { shared } = await readSharedData(reading, dataDir);

const words = (text: string): number => text.split(/\s+/).length;
const sentences = (text: string): string[] => text.split(/(?<=[.:!?])\s+/);
const BANNED = /guaranteed|never fails|\bprime\b|\bpeak\b|\bperfect\b|\bhot\b|\bscore\b/i;

describe("the texts that all areas share", () => {
  test("have no problem", () => {
    expect(told(reading.problems)).toBe("");
  });

  test("hold a caution for each hazard of the catalogue", () => {
    const counts = { F: 7, T: 7, W: 8, E: 12 };
    const ids = Object.entries(counts).flatMap(([letter, n]) =>
      Array.from({ length: n }, (_, i) => `${letter}${i + 1}`),
    );
    expect(shared.cautions.map(({ id }) => id)).toEqual(ids);
  });

  test.each(shared.cautions)(
    "caution $id is at most 40 words in short sentences without figures",
    ({ text, title }) => {
      expect(words(text)).toBeLessThanOrEqual(40);
      for (const sentence of sentences(text)) expect(words(sentence), sentence).toBeLessThanOrEqual(22);
      expect(`${title} ${text}`).not.toMatch(BANNED);
      expect(text).not.toMatch(/\d/);
    },
  );

  test("the emergency texts hold no number to call, and their sentences are short", () => {
    const lines = [...shared.emergency.call, ...shared.emergency.firstAid.flatMap((entry) => entry.lines)];
    expect(lines.length).toBeGreaterThan(20);
    for (const line of lines) {
      expect(line).not.toMatch(/\d{3}/);
      for (const sentence of sentences(line)) expect(words(sentence), sentence).toBeLessThanOrEqual(22);
    }
  });

  test("no countdown is printed for a person who hangs, and nobody is kept sitting up", () => {
    const hanging = shared.emergency.firstAid.find(({ id }) => id === "hanging")!.lines.join(" ");
    expect(hanging).not.toMatch(/minute|second|hour|sit(ting)? up/i);
    expect(hanging).toContain("Lay the person flat");
  });

  test("a tourniquet is neither loosened nor a last resort", () => {
    const bleeding = shared.emergency.firstAid.find(({ id }) => id === "bleeding")!.lines.join(" ");
    expect(bleeding).not.toMatch(/loosen|last resort/i);
    expect(bleeding).toContain("Do not take it off");
  });

  test.each(Object.entries(shared.wording))("the standing sentence %s is short", (_key, text) => {
    for (const sentence of sentences(text)) expect(words(sentence), sentence).toBeLessThanOrEqual(22);
    expect(text).not.toMatch(BANNED);
  });
});
