import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { AirSpan, DayTracksChart, MonthStripsChart } from "../../scripts/briefing/pages/charts.ts";
import { clockAxis } from "../../scripts/drawing/clockAxis.ts";
import { dayTracks } from "../../scripts/drawing/dayTracks.ts";
import { drawnChart, NARROW_MM } from "../../scripts/drawing/drawPages.ts";
import { lightStretches } from "../../scripts/drawing/lightBar.ts";
import { clockHours, hourScale, monthStrips } from "../../scripts/drawing/monthStrips.ts";
import { drawnStretches, slopeAirStrip } from "../../scripts/drawing/slopeAirStrip.ts";
import { VERDICT_MARKS } from "../../scripts/drawing/verdictMarks.ts";
import { formFaults, labelFaults, textBoxes } from "./svgFaults.ts";

const ZONE = "Europe/Vienna";
const DAY = "2026-10-14";
const at = (clock: string): Date => new Date(`${DAY}T${clock}:00+02:00`);
const midnight = new Date("2026-10-15T00:00:00+02:00");

function span(
  phase: AirSpan["phase"],
  from: Date,
  to: Date,
  fromRange?: [Date, Date],
  toRange?: [Date, Date],
): AirSpan {
  return { phase, from, to, fromRange: fromRange ?? [from, from], toRange: toRange ?? [to, to] };
}

/** Falls, turns 08:10 to 09:00, rises, turns 16:40 to 17:30, falls. */
const ordinary: AirSpan[] = [
  span("falling", at("00:00"), at("08:10"), undefined, [at("07:50"), at("08:20")]),
  span("turning", at("08:10"), at("09:00"), [at("07:50"), at("08:20")], [at("08:40"), at("09:30")]),
  span("rising", at("09:00"), at("16:40"), [at("08:40"), at("09:30")], [at("16:10"), at("17:00")]),
  span("turning", at("16:40"), at("17:30"), [at("16:10"), at("17:00")], [at("17:10"), at("18:00")]),
  span("falling", at("17:30"), midnight, [at("17:10"), at("18:00")]),
];

const light = { firstLight: at("06:50"), sunrise: at("07:20"), sunset: at("18:15"), lastLight: at("18:45") };

const tracks: DayTracksChart = {
  kind: "dayTracks",
  id: "day-3",
  title: "Light & air, site <3>",
  desc: "First light 06:50.",
  timezone: ZONE,
  wideMm: 180,
  localDate: DAY,
  light,
  legal: { from: at("06:50"), to: at("18:45") },
  usable: { from: at("07:00"), to: at("18:35") },
  air: ordinary,
};

const months: MonthStripsChart = {
  kind: "monthStrips",
  id: "year-3",
  title: "Turns, site 3",
  desc: "A row a half month.",
  timezone: ZONE,
  wideMm: 180,
  rows: [
    {
      label: "1 Oct",
      localDate: DAY,
      framed: false,
      sunrise: light.sunrise,
      sunset: light.sunset,
      air: ordinary,
    },
    {
      label: "16 Nov",
      localDate: DAY,
      framed: true,
      sunrise: null,
      sunset: null,
      air: [span("falling", at("00:00"), midnight)],
    },
  ],
};

describe("every drawing", () => {
  const drawings = [tracks, { ...tracks, wideMm: 126 }, months].flatMap((chart) => {
    const { svg } = drawnChart(chart);
    return [
      [`${chart.kind} at ${chart.wideMm} mm`, svg.wide, chart.wideMm],
      [`${chart.kind} for a phone`, svg.narrow, NARROW_MM],
    ] as const;
  });

  test.each(drawings)("%s is well formed, with every label inside and none touching", (_name, svg) => {
    expect(formFaults(svg)).toEqual([]);
    expect(labelFaults(svg)).toEqual([]);
    expect(textBoxes(svg).length).toBeGreaterThan(5);
  });

  test.each(drawings)("%s stands at its true size and tells its title and finding", (_name, svg, widthMm) => {
    const height = /height="([\d.]+)mm"/.exec(svg)?.[1];
    expect(svg).toContain(`width="${widthMm}mm"`);
    expect(svg).toContain(`viewBox="0 0 ${widthMm} ${height}"`);
    expect(svg).toMatch(/role="img" aria-labelledby="(\S+)-t \1-d"/);
    expect(svg).toMatch(/<title id="[^"]+">[^<]+<\/title><desc id="[^"]+">[^<]+<\/desc>/);
  });

  test.each(drawings)(
    "%s holds no script, style, link or image, and coordinates of 0.01 mm",
    (_name, svg) => {
      expect(svg).not.toMatch(
        /<(script|style|a|image|foreignObject|filter|linearGradient)\b|href=|style=|opacity/,
      );
      expect(svg).not.toMatch(/\d\.\d{3}/);
    },
  );

  test.each(drawings)("%s has text of at least 9 pt and lines of at least 0.25 mm", (_name, svg) => {
    for (const [, size] of svg.matchAll(/font-size="([\d.]+)"/g))
      expect(Number(size)).toBeGreaterThanOrEqual(3.175);
    for (const [, width] of svg.matchAll(/stroke-width="([\d.]+)"/g))
      expect(Number(width)).toBeGreaterThanOrEqual(0.25);
  });

  test("the drawings of one chart share no id, so that both may stand on a page", () => {
    const { svg } = drawnChart(tracks);
    expect(formFaults(`<g>${svg.wide}${svg.narrow}</g>`)).toEqual([]);
  });

  test("an owner's words in a title can not open a tag", () => {
    expect(drawnChart(tracks).svg.wide).toContain("Light &amp; air, site &lt;3&gt;");
  });

  test("labels never touch, wherever the turns fall", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 50, max: 280 }), { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 0, max: 12 }),
        fc.constantFrom(126, 180, NARROW_MM),
        (steps, spread, widthMm) => {
          const times = [...steps]
            .sort((a, b) => a - b)
            .map((s) => new Date(Number(at("00:00")) + s * 300_000));
          const around = (d: Date): [Date, Date] => [
            new Date(Number(d) - spread * 300_000),
            new Date(Number(d) + spread * 300_000),
          ];
          const marks = [at("00:00"), ...times, midnight];
          const air = (["falling", "turning", "rising", "turning", "falling"] as const).map((phase, i) =>
            span(
              phase,
              marks[i]!,
              marks[i + 1]!,
              i === 0 ? undefined : around(marks[i]!),
              i === 4 ? undefined : around(marks[i + 1]!),
            ),
          );
          const svg = dayTracks({ ...tracks, air }, widthMm, widthMm === NARROW_MM ? 4 : 2, "-t");
          expect([...formFaults(svg), ...labelFaults(svg)]).toEqual([]);
        },
      ),
      { seed: 11, numRuns: 300 },
    );
  });
});

describe("the light bar", () => {
  const axis = clockAxis(DAY, ZONE, { leftMm: 0, rightMm: 170, stepHours: 2 }, []);

  test("an ordinary day is night, twilight, day, twilight, night without gap", () => {
    const stretches = lightStretches(light, axis)!;
    expect(stretches.map((s) => s.state)).toEqual(["night", "twilight", "day", "twilight", "night"]);
    expect(stretches[0]?.from).toEqual(axis.from);
    expect(stretches.at(-1)?.to).toEqual(axis.to);
    for (const [i, s] of stretches.slice(1).entries()) expect(s.from).toEqual(stretches[i]!.to);
  });

  test("where twilight lasts all night there is no night", () => {
    const stretches = lightStretches({ ...light, firstLight: null, lastLight: null }, axis)!;
    expect(stretches.map((s) => s.state)).toEqual(["twilight", "day", "twilight"]);
  });

  test("where the sun does not rise there is twilight and no day", () => {
    const stretches = lightStretches({ ...light, sunrise: null, sunset: null }, axis)!;
    expect(stretches.map((s) => s.state)).toEqual(["night", "twilight", "night"]);
  });

  test("a sun that sets after midnight leaves day at both ends", () => {
    const wide = { from: at("00:00"), to: midnight };
    const stretches = lightStretches(
      { firstLight: null, sunset: at("00:30"), sunrise: at("02:10"), lastLight: null },
      wide,
    )!;
    expect(stretches.map((s) => s.state)).toEqual(["day", "twilight", "day"]);
  });

  test("a day without any event is left to words", () => {
    expect(
      lightStretches({ firstLight: null, sunrise: null, sunset: null, lastLight: null }, axis),
    ).toBeNull();
  });
});

describe("the slope-air strip", () => {
  test("a turn is drawn over its whole range, earliest to latest", () => {
    const drawn = drawnStretches(ordinary);
    expect(drawn.map((s) => [s.phase, s.from, s.to])).toEqual([
      ["falling", at("00:00"), at("07:50")],
      ["turning", at("07:50"), at("09:30")],
      ["rising", at("09:30"), at("16:10")],
      ["turning", at("16:10"), at("18:00")],
      ["falling", at("18:00"), midnight],
    ]);
  });

  test("where ranges would swallow a short rise, it keeps its plain time", () => {
    const air = [
      span("falling", at("00:00"), at("10:00"), undefined, [at("09:00"), at("11:30")]),
      span("turning", at("10:00"), at("11:00"), [at("09:00"), at("11:30")], [at("10:30"), at("13:00")]),
      span("rising", at("11:00"), at("12:00"), [at("10:30"), at("13:00")], [at("11:00"), at("13:30")]),
      span("turning", at("12:00"), at("13:00"), [at("11:00"), at("13:30")], [at("12:30"), at("14:00")]),
      span("falling", at("13:00"), midnight, [at("12:30"), at("14:00")]),
    ];
    const drawn = drawnStretches(air);
    expect(drawn[2]).toEqual({ phase: "rising", from: at("11:00"), to: at("12:00") });
    for (const [i, s] of drawn.slice(1).entries()) expect(s.from).toEqual(drawn[i]!.to);
  });

  test("falling is drawn low, rising high, and positions map back to their times within 0.2 mm", () => {
    const axis = clockAxis(DAY, ZONE, { leftMm: 15, rightMm: 177, stepHours: 2 }, []);
    const svg = slopeAirStrip(ordinary, axis, 0);
    const levels = [
      ...(/d="([^"]+)"[^>]*stroke-width="0.9"/.exec(svg)?.[1] ?? "").matchAll(/M([\d.]+) ([\d.]+)H([\d.]+)/g),
    ];
    expect(levels.length).toBe(3);
    const [fall, rise] = levels;
    expect(Number(fall?.[2])).toBeGreaterThan(Number(rise?.[2]));
    expect(Math.abs(Number(rise?.[1]) - axis.x(at("09:30")))).toBeLessThan(0.2);
    expect(Math.abs(Number(rise?.[3]) - axis.x(at("16:10")))).toBeLessThan(0.2);
  });

  test("a day that only falls is one level line with its word", () => {
    const svg = dayTracks({ ...tracks, air: [span("falling", at("00:00"), midnight)] }, 180, 2, "-x");
    expect(svg).toContain(">falling<");
    expect(svg).not.toContain(">turning<");
    expect(formFaults(svg)).toEqual([]);
  });

  test("a day that turns from midnight to midnight has no level line", () => {
    const svg = dayTracks({ ...tracks, air: [span("turning", at("00:00"), midnight)] }, 180, 2, "-x");
    expect(svg).toContain(">turning<");
    expect(svg).not.toContain(">rising<");
    expect([...formFaults(svg), ...labelFaults(svg)]).toEqual([]);
  });
});

describe("brackets", () => {
  test("legal hours that are not confirmed have no bracket and no name", () => {
    expect(dayTracks({ ...tracks, legal: null }, 180, 2, "-x")).not.toContain(">Legal<");
    expect(dayTracks(tracks, 180, 2, "-x")).toContain(">Legal<");
  });
});

describe("month strips", () => {
  test("a row stands by the clock of its own day", () => {
    expect(clockHours(at("08:15"), DAY, ZONE)).toBe(8.25);
    expect(clockHours(midnight, DAY, ZONE)).toBe(24);
  });

  test("the bar of a turn maps back to its range within 0.2 mm", () => {
    const scale = hourScale(months, 15.5, 177);
    const svg = monthStrips(months, 180, 2, "-x");
    const [, x, width] =
      /<rect class="draw-line" x="([\d.]+)" y="[\d.]+" width="([\d.]+)" height="2.6"/.exec(svg) ?? [];
    expect(Math.abs(Number(x) - scale.x(7 + 50 / 60))).toBeLessThan(0.2);
    expect(Math.abs(Number(x) + Number(width) - scale.x(9.5))).toBeLessThan(0.2);
  });

  test("the row of the table date is framed, and no other", () => {
    const framed = monthStrips(months, 180, 2, "-x").match(/stroke-width="0.5"/g) ?? [];
    expect(framed.length).toBe(1);
  });
});

test("the marks of the four verdicts and of the three phases are all there, well formed", () => {
  expect(formFaults(VERDICT_MARKS)).toEqual([]);
  for (const id of [
    "mark-suits",
    "mark-marginal",
    "mark-avoid",
    "mark-not-assessed",
    "arrow-falling",
    "arrow-turning",
    "arrow-rising",
  ]) {
    expect(VERDICT_MARKS).toContain(`id="${id}"`);
  }
});
