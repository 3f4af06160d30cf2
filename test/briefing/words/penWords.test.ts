import { describe, expect, test } from "vitest";
import { penLine } from "../../../scripts/briefing/words/penLine.ts";
import { spokenDigits } from "../../../scripts/briefing/words/spokenDigits.ts";
import { tempText } from "../../../scripts/briefing/words/tempText.ts";

describe("a figure read over a phone", () => {
  test("every digit stands by itself, the sign and the point are words", () => {
    expect(spokenDigits("-45.03")).toBe("minus four five point zero three");
    expect(spokenDigits("18T TL 61179")).toBe("one eight T T L six one one seven nine");
  });
});

describe("a sentence with blanks", () => {
  test("is cut at each underscore, the end without one is no blank", () => {
    expect(penLine("This is _, by _.")).toEqual([
      { say: "This is", blank: true },
      { say: ", by", blank: true },
      { say: ".", blank: false },
    ]);
    expect(penLine("No blank here.")).toEqual([{ say: "No blank here.", blank: false }]);
    expect(penLine("Name _")).toEqual([{ say: "Name", blank: true }]);
  });
});

describe("air temperature", () => {
  test("is whole degrees in the unit of the area, and never minus zero", () => {
    expect(tempText(-1.1, "us")).toBe("30 °F");
    expect(tempText(-0.4, "metric")).toBe("0 °C");
    expect(tempText(-40, "us")).toBe("-40 °F"); // where both scales meet
  });

  test("a temperature that is no number is refused", () => {
    expect(() => tempText(Number.NaN, "metric")).toThrow(/finite/);
  });
});
