import { type DemoFeature, lineOnBox } from "../mapFile.ts";
import { drawnStreams } from "./ground.ts";

const streamNames = {
  "turnpail-run": "Turnpail Run",
  "pail-gully": "Pail Gully",
  "icehouse-gully": "Icehouse Gully",
};

const streams: DemoFeature[] = (["turnpail-run", "pail-gully", "icehouse-gully"] as const).map((id) => ({
  id,
  kind: "stream",
  shape: "line",
  name: streamNames[id],
  points: lineOnBox(drawnStreams[id]),
}));

// Brooks that one step crosses are carved in the ground but not drawn: a walk-in over them is no crossing.
const ground: DemoFeature[] = [
  {
    id: "boundary",
    kind: "boundary",
    shape: "area",
    name: "Line of the ground",
    points:
      "450,250 420,1500 600,2600 900,3300 1450,3650 2500,3650 3250,3400 3650,2700 3800,1800 3750,1150 2950,720 2780,480 2300,250",
  },
  {
    id: "study-plot",
    kind: "closed",
    shape: "area",
    name: "Seedling plot",
    note: "Closed ground, no entry.",
    points: "2900,2450 3250,2400 3300,2750 2950,2750",
  },
  {
    id: "west-fields",
    kind: "block",
    shape: "area",
    name: "West Fields",
    note: "Permission ended. Ask the owner.",
    points: "450,250 1600,250 1600,700 440,700",
  },
  {
    id: "neighbor-house",
    kind: "building",
    shape: "place",
    name: "House, lived in",
    private: true,
    protects: "always",
    points: "3080,640",
  },
  { id: "foundation-hole", kind: "hazard", shape: "place", name: "Old foundation hole", points: "2700,1345" },
  {
    id: "helicopter-spot",
    kind: "helicopter-spot",
    shape: "place",
    name: "Helicopter spot",
    points: "2540,640",
  },
  { id: "slab-ford", kind: "crossing", shape: "place", name: "Slab Ford", points: "2292,1185" },
  { id: "stepping-stones", kind: "crossing", shape: "place", name: "Stepping stones", points: "2340,850" },
];

const roads: DemoFeature[] = [
  {
    id: "hollow-road",
    kind: "road",
    shape: "line",
    name: "Hollow Road",
    points: "2520,-200 2520,100 2600,420 2600,640 2610,830",
  },
  {
    id: "haul-track",
    kind: "track",
    shape: "line",
    name: "Haul track",
    points: "2610,830 2480,960 2300,1180 2280,1190 2240,1450 2150,1700 2110,1860",
  },
  { id: "gap-path", kind: "track", shape: "line", name: "Gap path", points: "1830,3950 1870,3600 1900,3400" },
];

const deer: DemoFeature[] = [
  {
    id: "landing-clearing",
    kind: "feeding",
    shape: "area",
    name: "Landing clearing",
    points: "2080,950 2250,930 2270,1090 2110,1110",
  },
  {
    id: "old-orchard",
    kind: "feeding",
    shape: "area",
    name: "Old orchard",
    points: "2660,1270 2770,1250 2780,1340 2670,1360",
  },
  {
    id: "oak-bench-mast",
    kind: "feeding",
    shape: "area",
    name: "Oaks on the bench",
    points: "1180,1760 1240,1760 1240,1900 1170,1900",
  },
  {
    id: "laurel-slope",
    kind: "bedding",
    shape: "area",
    name: "Laurel slope",
    points: "820,1700 980,1680 1010,1950 850,2020 760,1900",
  },
  {
    id: "drum-point",
    kind: "bedding",
    shape: "area",
    name: "Drum Point",
    points: "3150,1650 3350,1640 3380,1780 3180,1760",
  },
  ...(
    [
      [
        "bench-trail",
        "Bench trail",
        "1180,2060 1195,1880 1208,1700 1203,1500 1290,1395 1560,1305 1850,1240 2060,1090 2062,980",
      ],
      ["gap-trail", "Gap trail", "1830,3700 1895,3480 1900,3400 1915,3300 1960,3050 1920,2700"],
      ["drum-trail", "Drum trail", "3160,1690 3010,1480 2900,1340 2770,1300"],
      ["ford-trail", "Ford trail", "2660,1320 2450,1260 2292,1185 2250,1080"],
      ["gully-trail", "Gully trail", "1000,1980 1180,2060 1440,2050 1640,1960 1900,1960"],
    ] as const
  ).map(([id, name, points]): DemoFeature => ({ id, kind: "deer-trail", shape: "line", name, points })),
];

const walkIns: DemoFeature[] = (
  [
    ["w1-ridge", "Ridge way", "1830,3950 1870,3600 1900,3400 1400,3430 930,2880 700,2200 900,1880 1180,1700"],
    [
      "w1-spur",
      "Tannery Spur",
      "2635,885 2480,960 2300,1180 1960,1200 1600,1290 1380,1375 1120,1460 1140,1600 1180,1700",
    ],
    ["w2-run", "Along the Run", "2635,885 2480,960 2300,1180 2280,1190 2190,1600 1750,1620 1235,1650"],
    ["w3-brook", "Brook way", "2635,885 2780,980 2885,1235"],
    ["w4-north", "Gap path", "1830,3950 1870,3600 1945,3470 1922,3410"],
    [
      "w5-gully",
      "Gully way",
      "2635,885 2480,960 2300,1180 2280,1190 2150,1700 2100,1860 1650,1850 1430,2025",
    ],
    ["w6-stones", "Stepping stones way", "2635,885 2480,840 2340,850 2100,800 2010,900 2036,1000"],
    ["w7-track", "Haul track", "2635,885 2480,960 2380,1030"],
  ] as const
).map(([id, name, points]) => ({ id, kind: "walk-in", shape: "line", name, protects: "occupied", points }));

export const features: DemoFeature[] = [...ground, ...streams, ...roads, ...deer, ...walkIns];
