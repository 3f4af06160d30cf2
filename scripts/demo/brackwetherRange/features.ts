import { type DemoFeature, lineOnBox } from "../mapFile.ts";
import { drawnStreams } from "./ground.ts";

const streamNames = {
  "brackwether-stream": "Brackwether Stream",
  "billhook-creek": "Billhook Creek",
  "lamp-creek": "Lamp Creek",
  "dray-creek": "Dray Creek",
  "sled-creek": "Sled Creek",
};

const streams: DemoFeature[] = (
  ["brackwether-stream", "billhook-creek", "lamp-creek", "dray-creek", "sled-creek"] as const
).map((id) => ({
  id,
  kind: "stream",
  shape: "line",
  name: streamNames[id],
  points: lineOnBox(drawnStreams[id]),
}));

// The blocks part along Billhook Creek in the north, Pannier Spur in the south, and the stream between them.
const billhook = "2180,2050 2260,2300 2230,2560 2340,2780 2300,3150 2300,3370";
const billhookDown = "2300,3370 2300,3150 2340,2780 2230,2560 2260,2300 2180,2050";
const streamWest = "100,1933 300,1950 760,1840 1200,1830 1700,1900 2200,1800";
const streamWestUp = "2200,1800 1700,1900 1200,1830 760,1840 300,1950 100,1933";
const streamEast = "2200,1800 2650,1780 3100,1700 3514,1691";
const streamEastUp = "3514,1691 3100,1700 2650,1780 2200,1800";
const pannierUp = "2200,1800 2060,1700 2010,1300 1900,800 1600,280";
const pannierDown = "1600,280 1900,800 2010,1300 2060,1700";

const blocks: DemoFeature[] = [
  {
    id: "block-a",
    kind: "block",
    shape: "area",
    name: "Block A",
    points: `100,3450 1500,3580 ${billhookDown} ${streamWestUp}`,
  },
  {
    id: "block-b",
    kind: "block",
    shape: "area",
    name: "Block B",
    points: `${billhook} 3100,3340 3650,3380 3700,1750 ${streamEastUp}`,
  },
  {
    id: "block-c",
    kind: "block",
    shape: "area",
    name: "Block C",
    points: `${pannierDown} ${streamEast} 3480,1680 3650,1100 3350,520`,
  },
  {
    id: "block-d",
    kind: "block",
    shape: "area",
    name: "Block D",
    note: "Permission ended. Ask the landholder.",
    points: `100,450 ${streamWest} ${pannierUp.replace("2200,1800 ", "")}`,
  },
];

const ground: DemoFeature[] = [
  {
    id: "boundary",
    kind: "boundary",
    shape: "area",
    name: "Line of the club's ground",
    points:
      "100,450 100,3450 1500,3580 2300,3370 3100,3340 3650,3380 3700,1750 3480,1680 3650,1100 3350,520 1600,280",
  },
  {
    id: "bird-plot",
    kind: "closed",
    shape: "area",
    name: "Ground-bird plot",
    note: "No firearm inside.",
    points: "3250,2350 3560,2350 3560,2700 3280,2700",
  },
  {
    id: "farmhouse",
    kind: "building",
    shape: "place",
    name: "Farmhouse, lived in",
    private: true,
    protects: "always",
    points: "3860,1380",
  },
  { id: "slip-edge", kind: "hazard", shape: "place", name: "Slip edge", points: "2450,1130" },
  {
    id: "helicopter-spot",
    kind: "helicopter-spot",
    shape: "place",
    name: "Helicopter spot",
    points: "3440,1800",
  },
  { id: "lower-ford", kind: "crossing", shape: "place", name: "Lower ford", points: "2900,1737" },
  { id: "upper-ford", kind: "crossing", shape: "place", name: "Upper ford", points: "1900,1860" },
];

const roads: DemoFeature[] = [
  {
    id: "valley-road",
    kind: "road",
    shape: "line",
    name: "Valley road",
    points: "4200,1740 3900,1710",
  },
  {
    id: "valley-track",
    kind: "track",
    shape: "line",
    name: "Valley track, public",
    protects: "always",
    points: "3900,1710 3600,1760 3350,1790",
  },
  {
    id: "flat-path",
    kind: "trail",
    shape: "line",
    name: "Unmarked path beyond the hut",
    points: "3350,1790 3050,1790 2950,1830",
  },
];

const deer: DemoFeature[] = [
  {
    id: "river-flat",
    kind: "feeding",
    shape: "area",
    name: "River flat",
    points: "2400,1840 2630,1830 2640,1950 2420,1970",
  },
  {
    id: "tawny-slip",
    kind: "feeding",
    shape: "area",
    name: "Tawny Slip",
    points: "2250,1090 2650,1110 2640,1160 2260,1140",
  },
  { id: "wallow", kind: "wallow", shape: "place", name: "Wallow", points: "2690,2375" },
  {
    id: "scrub-face",
    kind: "bedding",
    shape: "area",
    name: "Scrub face",
    points: "2040,820 2220,800 2240,960 2060,980",
  },
  {
    id: "tinker-point",
    kind: "bedding",
    shape: "area",
    name: "Tinker Point",
    points: "2960,2560 3110,2560 3120,2750 2990,2760",
  },
  ...(
    [
      ["warm-trail", "Warm trail", "1930,1060 2080,1130 2280,1112 2450,1102 2640,1132 2780,1180 2940,1240"],
      ["wallow-trail", "Wallow trail", "3000,2620 2860,2450 2690,2375 2650,2240 2600,2150"],
      ["forks-trail", "Forks trail", "2250,2480 2080,2560 1900,2640"],
      ["gable-trail", "Gable trail", "250,1150 430,1150 620,1200 900,1250"],
      [
        "saddle-trail",
        "Saddle trail",
        "2250,3600 2290,3300 2300,3150 2320,3000 2400,2800 2330,2620 2250,2480",
      ],
      ["flat-trail", "Flat trail", "2600,2150 2560,2050 2520,1930 2500,1790 2420,1600 2400,1300 2450,1105"],
    ] as const
  ).map(([id, name, points]): DemoFeature => ({ id, kind: "deer-trail", shape: "line", name, points })),
];

const walkIns: DemoFeature[] = (
  [
    [
      "w1-creek",
      "Sled Creek way",
      "3350,1790 3050,1790 2950,1830 2900,1737 2760,1600 2800,1300 2830,1090 2650,1010 2450,1030",
    ],
    ["w1-spur", "Pannier Spur", "1500,1985 1900,1860 2030,1500 1970,1150 2050,900 2310,860 2450,1030"],
    ["w2-ford", "Lower ford way", "3350,1790 3050,1790 2950,1830 2900,1737 2700,1500 2600,1300 2560,1200"],
    ["w3-bank", "Bank way", "3350,1790 3050,1790 2900,1960 2780,2120 2560,2250 2585,2370"],
    [
      "w4-spur",
      "Tinker Spur",
      "3350,1790 2960,1850 3000,2200 2990,2440 3050,2650 3030,2960 2850,3190 2390,3170",
    ],
    [
      "w4-creek",
      "Billhook Creek way",
      "1500,1985 1900,1930 2170,2050 2230,2300 2300,2560 2420,2900 2440,3080 2390,3170",
    ],
    [
      "w5-flat",
      "Across the flat",
      "3350,1790 2950,1830 2650,1870 2400,1880 2200,1980 2240,2150 2285,2300 2255,2380",
    ],
    ["w5-creek", "Creek way", "1500,1985 1900,1930 2170,2050 2210,2250 2255,2380"],
    ["w6-bank", "North bank", "1500,1985 1900,1930 2180,1960 2370,1930"],
    ["w7-track", "Path along the flat", "3350,1790 3050,1790 2950,1830 2700,1880"],
    ["w8-spur", "Gable Spur", "1500,1985 1010,1870 560,1740 450,1460 520,1060"],
  ] as const
).map(([id, name, points]) => ({ id, kind: "walk-in", shape: "line", name, protects: "occupied", points }));

export const features: DemoFeature[] = [...ground, ...blocks, ...streams, ...roads, ...deer, ...walkIns];
