import { beforeAll, describe, expect, test } from "vitest";
import { type SlopeAirDay, slopeAirDay } from "../../scripts/air/slopeAirDay.ts";
import type { Landform, Phase } from "../../scripts/air/slopeSite.ts";
import type { ElevationGrid } from "../../scripts/terrain/elevationGrid.ts";
import { horizonProfile } from "../../scripts/terrain/horizonProfile.ts";
import { jacksboroGrid, jacksboroPosition } from "../terrain/jacksboro.ts";
import { constants, sunOfDay } from "./planeSite.ts";

const HORIZON = { horizonReachM: 15_000, horizonNearM: 5000, refraction: 0.13, earthRadiusM: 6_371_000 };

/** 20 March, 21 June, 15 October, 21 December 2026: date, day of year, air temperature. */
const DAYS: readonly [string, number, number][] = [
  ["2026-03-20", 79, 8],
  ["2026-06-21", 172, 20],
  ["2026-10-15", 288, 12],
  ["2026-12-21", 355, 2],
];

type Site = [
  name: string,
  landform: Landform,
  row: number,
  column: number,
  heightM: number,
  slopeDeg: number,
  aspectDeg: number,
];
/** For each day: sun on, sun leaves, rising from with its range, falling from with its range. */
type Row = [Site, string[]];

// Times of an independent run on the file's own cells, UTC-5, timber, clear: plane fit over 160 m, skyline from 2 m.
const ROWS: readonly Row[] = [
  [
    ["E slope", "slope", 166, 110, 658, 20.5, 96],
    [
      "0711 1709 0731 0720 0759 1726 1651 1803",
      "0542 1806 0610 0557 0641 1822 1753 1911",
      "0713 1625 0733 0723 0804 1642 1603 1714",
      "0822 1544 0842 0830 0915 1609 1526 1631",
    ],
  ],
  [
    ["W slope", "slope", 166, 119, 648, 21, 275],
    [
      "0829 1817 0901 0825 1005 1842 1828 1907",
      "0712 1951 0743 0713 0834 2016 1958 2041",
      "0832 1719 0904 0825 1014 1744 1730 1808",
      "0931 1658 1009 0921 1132 1723 1709 1747",
    ],
  ],
  [
    ["N slope", "slope", 259, 110, 485, 20.9, 7],
    [
      "0714 1814 0751 0730 0831 1831 1738 1906",
      "0541 1937 0616 0558 0656 2002 1941 2027",
      "0723 1644 0807 0739 0909 1709 1618 1735",
      "0907 1503 1001 0916 1132 1528 1425 1620",
    ],
  ],
  [
    ["S slope", "slope", 183, 114, 742, 20.9, 175],
    [
      "0742 1815 0802 0750 0822 1840 1816 1858",
      "0646 1858 0706 0654 0746 1915 1836 1941",
      "0739 1734 0759 0748 0818 1759 1742 1817",
      "0836 1720 0856 0843 0916 1738 1716 1802",
    ],
  ],
  [
    ["E lower slope, deep valley", "slope", 281, 232, 567, 14.4, 96],
    [
      "0713 1652 0733 0722 0803 1717 1703 1802",
      "0530 1754 0614 0557 0646 1819 1805 1912",
      "0717 1610 0737 0726 0808 1635 1621 1714",
      "0826 1518 0846 0833 0919 1543 1528 1620",
    ],
  ],
  [
    ["W lower slope, deep valley", "slope", 158, 158, 548, 16.1, 277],
    [
      "0850 1826 0910 0859 0935 1851 1838 1914",
      "0738 1844 0758 0746 0818 1909 1856 1933",
      "0847 1732 0907 0856 0944 1757 1743 1822",
      "0939 1650 0959 0948 1104 1715 1700 1740",
    ],
  ],
  [
    ["ridge crest", "crest", 80, 324, 626, 0.7, 90],
    [
      "0642 1845 0750 0733 0817 1848 1834 1912",
      "0522 1948 0632 0614 0701 1953 1939 2018",
      "0646 1753 0754 0737 0822 1759 1745 1823",
      "0747 1720 0903 0844 0934 1720 1706 1745",
    ],
  ],
  [
    ["gully", "slope", 170, 192, 524, 11.7, 101],
    [
      "0647 1707 0733 0715 0805 1732 1718 1803",
      "0522 1757 0617 0600 0648 1822 1809 1913",
      "0711 1601 0737 0727 0810 1626 1612 1715",
      "1002 1516 1022 1006 1047 1541 1527 1621",
    ],
  ],
  [
    ["valley floor", "floor", 225, 195, 506, 2.3, 355],
    [
      "0643 1848 0830 0803 0925 2013 1936 2135",
      "0522 1956 0713 0645 0808 2118 2041 2240",
      "0646 1800 0834 0807 0930 1924 1848 2047",
      "0747 1724 0943 0914 1041 1846 1808 2009",
    ],
  ],
  [
    ["bench", "slope", 68, 147, 594, 5.5, 358],
    [
      "0713 1743 0752 0731 0822 1808 1754 1834",
      "0541 1923 0629 0607 0701 1948 1934 2013",
      "0724 1641 0759 0740 0829 1706 1652 1731",
      "0835 1546 0914 0852 0948 1611 1557 1636",
    ],
  ],
  [
    ["saddle", "slope", 81, 104, 681, 4, 263],
    [
      "0710 1848 0759 0738 0833 1857 1841 1923",
      "0545 1947 0642 0621 0715 2002 1945 2029",
      "0738 1800 0803 0745 0839 1808 1753 1834",
      "0910 1717 0930 0917 0951 1730 1713 1758",
    ],
  ],
  [
    ["spur, SE", "slope", 222, 150, 858, 9.4, 120],
    [
      "0646 1808 0736 0719 0807 1821 1759 1851",
      "0528 1903 0623 0607 0652 1916 1857 1945",
      "0649 1725 0739 0721 0811 1737 1714 1806",
      "0757 1658 0845 0824 0921 1706 1641 1738",
    ],
  ],
];

let grid: ElevationGrid;
beforeAll(async () => {
  grid = await jacksboroGrid();
});

function minuteOf(at: Date | null | undefined, day: SlopeAirDay): number {
  return at ? (at.getTime() - day.start.getTime()) / 60_000 : Number.NaN;
}

function found(day: SlopeAirDay): number[] {
  const of = (phase: Phase, afterMin: number) =>
    day.spans.find((s) => s.phase === phase && minuteOf(s.from, day) > afterMin);
  const rising = of("rising", 0);
  const falling = of("falling", 12 * 60);
  const times = [
    day.sunOn,
    day.sunLeaves,
    rising?.from,
    ...(rising?.fromRange ?? []),
    falling?.from,
    ...(falling?.fromRange ?? []),
  ];
  return times.map((at) => minuteOf(at, day));
}

/** Found less expected in minutes, for every site and day. */
function differences(): { name: string; landform: Landform; offMin: number[] }[] {
  return ROWS.flatMap(([[name, landform, row, column, elevationM, slopeDeg, aspectDeg], days]) => {
    const position = jacksboroPosition(row, column);
    const horizonDeg = horizonProfile(grid, position, 2, HORIZON).horizon?.angleDeg ?? null;
    const ground = { slopeDeg, aspectDeg, landform, elevationM, horizonDeg };
    return DAYS.map(([date, dayOfYear, airTempC], i) => {
      const dayStart = new Date(`${date}T00:00:00-05:00`);
      const dayEnd = new Date(dayStart.getTime() + 86_400_000);
      const day = slopeAirDay({
        site: { ...ground, cover: "timber", floorDriftToDeg: null, sxDeg: null },
        sun: sunOfDay(dayStart, position),
        dayStart,
        dayEnd,
        dayOfYear,
        weather: { cloudShare: 0, airTempC, relativeHumidity: 0.7 },
        constants,
      });
      const expected = (days[i] ?? "").split(" ").map((t) => Number(t.slice(0, 2)) * 60 + Number(t.slice(2)));
      return {
        name: `${name} ${date}`,
        landform,
        offMin: found(day).map((m, k) => m - (expected[k] as number)),
      };
    });
  });
}

describe("the day's air on real ground, Cumberland Mountains", () => {
  test("where the skyline hardly matters (floor, crest) turns and ranges are those of an independent run", () => {
    for (const { name, landform, offMin } of differences()) {
      if (landform === "slope") continue;
      for (const off of offMin.slice(2)) expect(Math.abs(off), name).toBeLessThanOrEqual(2);
    }
  });

  test("on twelve sites and four seasons half the times agree to the minute, nine in ten within 4 min", () => {
    // The skyline here is that of the resampled grid, the expected one that of the file's own cells: where the sun
    // grazes a ridge (gully in December) a tenth of a degree is worth some minutes.
    const all = differences()
      .flatMap(({ offMin }) => offMin.slice(2).map(Math.abs))
      .sort((a, b) => a - b);
    expect(all).toHaveLength(12 * 4 * 6);
    expect(all[Math.floor(all.length * 0.5)]).toBeLessThanOrEqual(1);
    expect(all[Math.floor(all.length * 0.9)]).toBeLessThanOrEqual(4);
    expect(all.at(-1)).toBeLessThanOrEqual(25);
  });
});
