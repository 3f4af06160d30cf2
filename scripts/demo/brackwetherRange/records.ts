import type { RosterFile } from "../../content/schema/rosterSchema.ts";
import type { DemoCamera } from "../cameraFiles.ts";
import type { WindPlan } from "../windRecord.ts";

const series = {
  from: "2027-03-01",
  days: 31,
  species: "red deer",
  classes: ["stag", "stag", "hind", "hind", "unknown"],
  clockOffsetMin: 0,
};

export const cameras: DemoCamera[] = [
  {
    ...series,
    id: "warm-foot-camera",
    name: "Warm trail above the red beech",
    site: "warm-foot",
    at: "2565,1120",
    visits: "06:2 07:8 08:10 09:5 10:2 16:2 17:4 18:8 19:9 20:4 21:1",
  },
  {
    ...series,
    id: "wallow-camera",
    name: "Wallow",
    site: "wallow-side",
    at: "2686,2380",
    visits: "00:5 01:6 02:4 03:5 04:4 05:4 06:2 19:1 20:4 21:7 22:6 23:5",
  },
  {
    ...series,
    id: "saddle-camera",
    name: "Tin Saddle",
    site: "tin-saddle",
    at: "2302,3152",
    visits:
      "2027-03-04T19:12 2027-03-09T07:40 2027-03-15T19:31 2027-03-16T08:05 2027-03-22T18:58 2027-03-28T07:51",
  },
  {
    ...series,
    id: "forks-camera",
    name: "Creek forks",
    site: "billhook-forks",
    at: "2252,2478",
    visits: "07:4 08:6 09:4 18:3 19:6 20:5",
  },
  {
    ...series,
    id: "flat-west-camera",
    name: "River flat, west edge",
    site: "flat-west",
    at: "2405,1925",
    visits: "07:2 17:3 18:7 19:11 20:8 21:3",
  },
  {
    ...series,
    id: "flat-east-camera",
    name: "River flat, east edge",
    site: "flat-east",
    at: "2632,1890",
    visits: "07:6 08:8 09:3 18:5 19:7 20:3",
    clockOffsetMin: -60,
    notes: "Clock was set an hour fast. The table keeps the camera's own clock.",
  },
];

export const wind: WindPlan = {
  file: "tin-saddle-station.csv",
  periods: [
    { from: "2025-02-01", to: "2025-05-31" },
    { from: "2026-02-01", to: "2026-05-31" },
  ],
  shares:
    "N 6, NNE 3, NE 4, ENE 4, E 6, ESE 5, SE 5, SSE 4, S 8, SSW 7, SW 8, WSW 5, W 7, WNW 9, NW 12, NNW 7",
  dayMps: 5, // 18 km/h
  nightMps: 2.5, // 9 km/h
  calmShare: 0.35,
  missingShare: 0,
  seed: 211,
};

export const roster: RosterFile = {
  buffer: 1,
  rows: [
    {
      block: "block-b",
      from: "2027-04-02",
      to: "2027-04-05",
      party: "Kettle",
      roadEnd: "road-end",
      vehicles: 1,
      contact: "Marrit, DEMO",
    },
    {
      block: "block-c",
      from: "2027-04-02",
      to: "2027-04-05",
      party: "Lantern",
      roadEnd: "road-end",
      vehicles: 2,
      contact: "Corin, DEMO",
    },
    {
      block: "block-a",
      from: "2027-04-03",
      to: "2027-04-04",
      party: "Visitors",
      roadEnd: "road-end",
      vehicles: 1,
      contact: "Contact Five, DEMO",
    },
    { block: "block-c", from: "2027-04-06", to: "2027-04-15", party: "None: the block rests" },
    {
      block: "block-b",
      from: "2027-04-16",
      to: "2027-04-18",
      party: "Kettle",
      roadEnd: "road-end",
      vehicles: 1,
      contact: "Marrit, DEMO",
    },
  ],
};
