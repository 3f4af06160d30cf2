import { describe, expect, test } from "vitest";
import { contrast, contrastFaults, luminance } from "./contrastFaults.ts";
import { policyFaults } from "./policyFaults.ts";
import { readPdf } from "./printedPdf.ts";
import { type Stale, staleFaults } from "./staleFaults.ts";
import { wordFaults } from "./wordFaults.ts";

describe("contrast", () => {
  // W3C, Understanding WCAG 2.2, 1.4.3 and 1.4.6, from memory: black on white is 21, #767676 on white the least grey of 4.5
  test("of black on white is 21, of #767676 on white just over 4.5", () => {
    expect(contrast("#000", "#fff")).toBe(21);
    expect(contrast("rgb(255, 255, 255)", "#767676")).toBeCloseTo(4.54, 2);
    expect(luminance("#f00")).toBeCloseTo(0.2126, 10);
  });

  const day = { ink: "#111", paper: "#fff", quiet: "#595959", line: "#767676", night: "#111", day: "#fff" };
  test("a theme that holds has no fault", () => {
    expect(contrastFaults("day", day)).toEqual([]);
  });

  test.each([
    ["pale secondary text", { quiet: "#666" }, "day: --quiet on --paper is 5.74, at least 7"],
    ["lines that fade", { line: "#999" }, "day: --line on --paper is 2.85, at least 3"],
    [
      "a night as pale as the day",
      { night: "#777", day: "#999" },
      "day: --night on --day is 1.57, at least 3",
    ],
    ["a token that is missing", { quiet: "" }, "day: no token --quiet"],
  ])("%s is found", (_what, tokens, fault) => {
    expect(contrastFaults("day", { ...day, ...tokens })).toContain(fault);
  });

  test("pure red on black passes as the red theme and fails as any other", () => {
    const red = { ink: "#f00", paper: "#000", quiet: "#f00", line: "#f00", night: "#f00", day: "#000" };
    expect(contrastFaults("red", red)).toEqual([]);
    expect(contrastFaults("dim", red)[0]).toBe("dim: --ink on --paper is 5.25, at least 7");
  });

  test("a colour that can not be read is an error", () => {
    expect(() => contrast("tomato", "#fff")).toThrow(RangeError);
  });
});

describe("words", () => {
  const faultsOf = (text: string, apart: string[] = []) =>
    wordFaults({ blocks: [{ kind: "p", text }], rows: [] }, apart);
  const long = `${"word ".repeat(22)}word.`;

  test.each([
    ["a plain answer", "Sit here with wind from SW to NW. Leave about 08:45."],
    ["a legal time and a range", "Legal hours 07:18 to 18:15. Sunrise 07:48."],
    ["drift, which goes towards", "The air drifts towards NE."],
    ["a place that faces", "The bench faces E."],
    ["safe, with from what", "This side is safe from the road."],
    ["a hot drink", "Take a hot drink."],
    ["about before each estimate", "The air turns about 08:00 to about 09:00."],
    [
      "a long list of winds",
      "No site suits wind from N, NNE, NE, ENE, E, ESE, SE, SSE, S, SSW, SW, WSW, W, WNW, NW and NNW, calm.",
    ],
    ["a question in the key", "How often, from 5 observations up"],
    [
      "bearings with their reason",
      `Do not shoot ${"003 to 323 (boundary at 991 m), ".repeat(6)}009 to 010 (camp at 9 m).`,
    ],
    ["figures with units", "Trunk 204 mm at 1.3 m, about 499 to 531 mm at 4.5 m, 98.4 ft, 30 in."],
    ["a labelled list", `Lane A: ${"seen by day; ".repeat(9)}free.`],
    ["rows of values", `Usable ${"light ".repeat(12)}; ${"sun ".repeat(12)}`],
  ])("%s has no fault", (_what, text) => {
    expect(faultsOf(text)).toEqual([]);
  });

  test.each([
    ["a sentence of 23 words", long, "23 words in a sentence"],
    ["a row of 23 words without an end", long.slice(0, -1), "23 words in a sentence"],
    ["a long clause after a label", `Lane A: ${long}`, "23 words in a sentence"],
    [
      "a sentence hung together by semicolons",
      `${"word ".repeat(11)}word; ${"word ".repeat(10)}word.`,
      "23 words",
    ],
    ["a long median", `${"word ".repeat(12)}word.`, "a median of 13 words"],
    ["safe without from what", "This way is safe.", 'the banned word "safe"'],
    ["a promise", "It never fails.", 'the banned word "never fails"'],
    ["a score", "Score 7 of 10.", 'the banned word "Score"'],
    ["a fifth likelihood word", "Deer often come.", 'the banned word "often"'],
    ["a wind without from", "Wind NW 3 m/s.", 'a wind without "from"'],
    ["a wind named by its point", "A light NW wind.", 'a wind without "from"'],
    ["a north wind", "With a northerly wind.", 'a wind without "from"'],
    ["a turn to the minute", "The air turns at 09:15.", 'an estimated time without "about"'],
    ["an end to the minute", "Sit until 09:15.", 'an estimated time without "about"'],
    ["a walk to the minute", "Odell: 43 min in.", 'an estimated time without "about"'],
  ])("%s is found", (_what, text, words) => {
    expect(faultsOf(text).join("\n")).toContain(words);
  });

  test("words of an owner stand apart, in whole words, and hide nothing beside them", () => {
    expect(faultsOf("At Perfect Bench. Wind from N.", ["Perfect Bench"])).toEqual([]);
    expect(faultsOf(`${long} Ours.`, [long])).toEqual([]);
    expect(faultsOf("A perfect Perfect Bench.", ["Perfect Bench"])).toHaveLength(1);
    expect(faultsOf("Perfection is perfect.", ["Perfect"])).toHaveLength(1);
  });

  test("a schedule row to the minute is found where it is an estimate, not where it is agreed", () => {
    const rows = [
      { time: "08:45", task: "sit until now; then leave quietly" },
      { time: "07:18", task: "legal hours start" },
      { time: "about 10:10", task: "back by" },
    ];
    expect(wordFaults({ blocks: [], rows }, [])).toEqual([
      'an estimated time without "about": "08:45 sit until now; then leave quietly"',
    ]);
  });
});

describe("the content security policy", () => {
  const html = (policy: string, before = "") =>
    `<head>${before}<meta http-equiv="Content-Security-Policy" content="${policy}"></head>`;
  const sound =
    "default-src 'none'; style-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'";

  test("keeps to the pack", () => {
    expect(policyFaults(html(sound))).toEqual([]);
  });

  test.each([
    ["no policy", "<head></head>", "has no content security policy"],
    [
      "a remote source",
      html(`${sound}; font-src https://example.invalid`),
      "lets font-src reach https://example.invalid",
    ],
    ["any source", html(sound.replace("'none'", "*")), "lets default-src reach *"],
    ["inline scripts", html(`${sound}; script-src 'unsafe-inline'`), "lets script-src reach 'unsafe-inline'"],
    ["forms", html(sound.replace("; form-action 'none'", "")), "has no form-action"],
    ["a policy too late", html(sound, "<script></script>"), "stands behind"],
  ])("%s is found", (_what, page, words) => {
    expect(policyFaults(page).join()).toContain(words);
  });
});

describe("old facts", () => {
  const fresh: Stale = { forecast: false, lawCheck: false, magneticModel: false };
  test.each([
    ["an old forecast", { forecast: true }, "Forecast, issued 5 Nov 04:00, OLD FORECAST"],
    ["an old law check", { lawCheck: true }, "Notice 3, checked 2 Mar 2024, OLD: check it again"],
    [
      "a magnetic model out of its years",
      { magneticModel: true },
      "Magnetic north: not known, the model ends",
    ],
  ])("%s must be said in words, and only then", (_what, stale, words) => {
    expect(staleFaults(words, { ...fresh, ...stale })).toEqual([]);
    expect(staleFaults("All is well.", { ...fresh, ...stale })).toHaveLength(1);
    expect(staleFaults(words, fresh)).toHaveLength(1);
  });
});

test("a PDF whose pages can not be counted is an error, not one sheet", () => {
  expect(() => readPdf(Buffer.from("%PDF-1.4 /Type /ObjStm"))).toThrow(RangeError);
  expect(() => readPdf(Buffer.from("/Type /Pages /Count 2 >> /Type /Page "))).toThrow(/2/);
});
