import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { barredSpanText, bearingText, compassSentence } from "../../../scripts/briefing/words/bearingText.ts";
import {
  dateSpanText,
  dateText,
  dayMonthText,
  weekdayName,
} from "../../../scripts/briefing/words/dateText.ts";
import {
  aboutMinutesText,
  durationText,
  hoursMinutesText,
} from "../../../scripts/briefing/words/durationText.ts";
import { isOldFact } from "../../../scripts/briefing/words/factAge.ts";
import { listWords } from "../../../scripts/briefing/words/listWords.ts";
import {
  airSpeedText,
  heightText,
  platformText,
  rangeText,
  trunkText,
  walkDistanceText,
  windSpeedText,
} from "../../../scripts/briefing/words/measureText.ts";
import { inTenText, oftenText } from "../../../scripts/briefing/words/shareWords.ts";
import { windRunsText } from "../../../scripts/briefing/words/windWords.ts";
import { COMPASS_POINTS } from "../../../scripts/geo/compassPoints.ts";

describe("dates", () => {
  test.each([
    ["en-GB", "14 Oct 2027", "14 Oct"],
    ["en-NZ", "14 Oct 2027", "14 Oct"],
    ["en-US", "Oct 14, 2027", "Oct 14"],
    ["en-CA", "Oct 14, 2027", "Oct 14"],
  ])("%s writes %s and %s", (locale, full, short) => {
    expect(dateText("2027-10-14", locale)).toBe(full);
    expect(dayMonthText("2027-10-14", locale)).toBe(short);
  });

  test("a span names a year once when it has one year", () => {
    expect(dateSpanText("2026-10-01", "2026-11-15", "en-GB")).toBe("1 Oct to 15 Nov 2026");
    expect(dateSpanText("2026-12-01", "2027-01-15", "en-GB")).toBe("1 Dec 2026 to 15 Jan 2027");
    expect(dateSpanText("2026-10-01", "2026-10-01", "en-US")).toBe("Oct 1, 2026");
  });

  test("7 November 2027 is a Sunday (calendar)", () => {
    expect(weekdayName("2027-11-07")).toBe("Sunday");
  });
});

// Exact by definition: foot 0.3048 m, yard 0.9144 m, mile 1609.344 m, inch 25.4 mm.
test.each([
  ["height", heightText(640, "metric"), "640 m", heightText(640, "us"), "2100 ft"],
  ["platform", platformText(5.25, "metric"), "5.3 m", platformText(6.096, "us"), "20 ft"],
  ["range", rangeText(70, "metric"), "70 m", rangeText(70, "us"), "77 yd"],
  ["short walk", walkDistanceText(430, "metric"), "450 m", walkDistanceText(430, "us"), "450 yd"],
  ["long walk", walkDistanceText(1440, "metric"), "1.4 km", walkDistanceText(1440, "us"), "0.9 miles"],
  ["walk near 1 km", walkDistanceText(980, "metric"), "1 km", walkDistanceText(800, "us"), "850 yd"],
  ["trunk", trunkText(310.4, "metric"), "310 mm", trunkText(254, "us"), "10 in"],
  ["wind", windSpeedText(2, "metric"), "2 m/s", windSpeedText(6, "us"), "13 mph"],
  ["slope air", airSpeedText(0.62, "metric"), "0.6 m/s", airSpeedText(0.62, "us"), "1.5 mph"],
])("%s in both units", (_what, metric, metricText, us, usText) => {
  expect([metric, us]).toEqual([metricText, usText]);
});

test("a measure that is not a number is refused, not printed", () => {
  for (const measure of [
    heightText,
    platformText,
    rangeText,
    walkDistanceText,
    trunkText,
    windSpeedText,
    airSpeedText,
  ]) {
    expect(() => measure(Number.NaN, "metric")).toThrow(RangeError);
    expect(() => measure(Number.POSITIVE_INFINITY, "us")).toThrow(RangeError);
  }
});

describe("bearings", () => {
  test.each([
    [0, "000"],
    [359.6, "000"],
    [67.5, "068"],
    [-10, "350"],
  ])("%d is read out %s", (bearing, text) => {
    expect(bearingText(bearing)).toBe(text);
  });

  test("a barred sector is printed outward, over north too", () => {
    expect(barredSpanText(40.2, 84.1)).toBe("040 to 085");
    expect(barredSpanText(350.9, 359.4)).toBe("350 to 000");
  });

  // East declination: the needle points east of true north, so a compass reads less than the true bearing.
  test.each([
    [25.27, "Compass = true bearing minus 25.3 degrees."],
    [-10.6, "Compass = true bearing plus 10.6 degrees."],
    [1.04, "Compass = true bearing minus 1 degree."],
    [0.04, "Compass and true bearing are the same here."],
  ])("declination %d: %s", (declination, sentence) => {
    expect(compassSentence(declination)).toBe(sentence);
  });
});

describe("winds", () => {
  test.each([
    [["SW", "WSW", "W", "WNW", "NW"], "SW to NW"],
    [["NNW", "N", "NNE", "S"], "NNW to NNE and S"],
    [["E", "ENE"], "ENE and E"],
    [["N", "NNW"], "NNW and N"],
    [[], ""],
    [[...COMPASS_POINTS], "any direction"],
  ])("%j is %s", (winds, text) => {
    expect(windRunsText(winds)).toBe(text);
  });

  test("every wind of a set can be read back from its words, and no other", () => {
    const readBack = (text: string): string[] => {
      if (text === "") return [];
      if (text === "any direction") return [...COMPASS_POINTS];
      return text.split(/, | and /).flatMap((part) => {
        const [first, last] = part.split(" to ");
        const names: readonly (string | undefined)[] = COMPASS_POINTS;
        const from = names.indexOf(first);
        const to = names.indexOf(last ?? first);
        return Array.from(
          { length: ((to - from + 16) % 16) + 1 },
          (_, i) => COMPASS_POINTS[(from + i) % 16]!,
        );
      });
    };
    fc.assert(
      fc.property(fc.subarray([...COMPASS_POINTS]), (winds) => {
        expect(readBack(windRunsText(winds)).sort()).toEqual([...winds].sort());
      }),
      { seed: 7 },
    );
  });
});

test.each([
  [45, "45 min"],
  [60, "1 h"],
  [681, "11 h 21 min"],
])("%i minutes are %s", (minutes, text) => {
  expect(durationText(minutes)).toBe(text);
});

test("walks are printed outward to 5 min, long ones in hours", () => {
  expect(aboutMinutesText([33, 51])).toBe("about 30 to 55 min");
  expect(aboutMinutesText([165, 196])).toBe("about 2 h 45 min to 3 h 20 min");
  expect(aboutMinutesText([40, 40])).toBe("about 40 min");
});

test("a day length is a column of hours and minutes", () => {
  expect(hoursMinutesText(681)).toBe("11:21");
  expect(hoursMinutesText(59.6)).toBe("1:00");
});

test.each([
  ["2025-03-30", "2026-03-30", false],
  ["2025-03-29", "2026-03-30", true],
  ["2024-02-29", "2025-03-01", false],
  ["2024-02-29", "2025-03-02", true],
])("a fact checked on %s, read on %s: old is %s", (checkedOn, onDate, old) => {
  expect(isOldFact(checkedOn, onDate)).toBe(old);
});

test.each([
  [10, 10, "nearly always"],
  [9, 10, "usually"],
  [2, 6, "sometimes"],
  [4, 6, "sometimes"],
  [1, 6, "seldom"],
  [2, 3, "2 of 3"],
])("%i of %i is %s", (count, of, word) => {
  expect(oftenText(count, of)).toBe(word);
});

test("a share of the deer is said in tenths", () => {
  expect(inTenText(0.68)).toBe("about 7 in 10");
});

test("lists end with and", () => {
  expect([listWords([]), listWords(["a"]), listWords(["a", "b"]), listWords(["a", "b", "c"])]).toEqual([
    "",
    "a",
    "a and b",
    "a, b and c",
  ]);
});
