import type { DemoCamera } from "../cameraFiles.ts";
import type { WindPlan } from "../windRecord.ts";

const period = { from: "2027-10-01", days: 34 };
const species = "white-tailed deer";
const classes = ["doe", "buck", "doe", "buck", "unknown"];

export const cameras: DemoCamera[] = [
  {
    id: "upper-bench-camera",
    name: "Bench trail below the white oak",
    site: "upper-bench",
    at: "1206,1702",
    ...period,
    visits: "05:2 06:6 07:11 08:7 09:3 10:1 15:1 16:4 17:9 18:8 19:3 22:1",
    species,
    classes,
    clockOffsetMin: 0,
  },
  {
    id: "orchard-camera",
    name: "Old orchard, west row",
    site: "orchard-corner",
    at: "2775,1290",
    ...period,
    visits:
      "2027-10-03T18:12 2027-10-09T07:20 2027-10-15T18:40 2027-10-21T19:02 2027-10-22T06:55 2027-10-29T17:31",
    species,
    classes,
    clockOffsetMin: 0,
  },
  {
    id: "gap-camera",
    name: "Saddle of Hatch Gap",
    site: "hatch-gap",
    at: "1902,3400",
    ...period,
    visits: "07:3 08:4 09:5 10:6 11:5 12:4 13:3 14:2 16:3 17:3",
    species,
    classes: ["buck", "doe", "buck"],
    clockOffsetMin: 0,
  },
  {
    id: "gully-camera",
    name: "Gully trail",
    site: "icehouse-gully",
    at: "1440,2050",
    ...period,
    visits: "00:7 01:5 02:6 03:4 04:5 05:3 06:1 18:1 19:3 20:6 21:7 22:5 23:6",
    species,
    classes,
    clockOffsetMin: 0,
  },
  {
    id: "landing-west-camera",
    name: "Landing clearing, west edge",
    site: "landing-west",
    at: "2085,1000",
    ...period,
    visits: "06:2 07:3 15:2 16:6 17:12 18:9 19:4",
    species,
    classes: ["doe", "buck"],
    counts: [2, 1],
    clockOffsetMin: 0,
  },
  {
    id: "landing-east-camera",
    name: "Landing clearing, east edge",
    site: "landing-east",
    at: "2268,1040",
    ...period,
    visits: "06:1 07:1 15:1 16:3 17:6 18:4 19:2",
    species,
    classes: ["doe", "buck"],
    counts: [2, 1],
    clockOffsetMin: 60,
    notes: "Clock found 60 min slow on November 3. The table keeps the camera's own clock.",
  },
];

export const wind: WindPlan = {
  file: "hatch-gap-station.csv",
  periods: [
    { from: "2025-09-01", to: "2025-11-30" },
    { from: "2026-09-01", to: "2026-11-30" },
  ],
  shares:
    "N 5, NNE 3, NE 3, ENE 2, E 3, ESE 3, SE 5, SSE 6, S 9, SSW 8, SW 9, WSW 9, W 12, WNW 10, NW 8, NNW 5",
  dayMps: 4.9, // 11 mph
  nightMps: 2.2, // 5 mph
  calmShare: 0.3,
  missingShare: 0.01,
  seed: 101,
};
