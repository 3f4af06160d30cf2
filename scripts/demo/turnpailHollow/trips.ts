import type { TripFile } from "../../content/schema/tripSchema.ts";
import { type DemoTrip, demoSits } from "../demoTrip.ts";

type Hunter = TripFile["hunters"][number];

const ALL_SITES = [
  "upper-bench",
  "lower-bench",
  "orchard-corner",
  "hatch-gap",
  "icehouse-gully",
  "landing-west",
  "landing-east",
];

const units = { speed: "mph", temp: "F", rain: "in" } as const;
const vehicle = { text: "Two trucks at Lower parking", plate: "DEMO 417" };

// Worn gear and pack are 14 kg together.
const bowKit = { clothing: 4.5, harness: 1.5, pack: 4.5, weapon: 2, water: 1.5 };
const rifleKit = { clothing: 4, harness: 1.5, pack: 3, weapon: 4, water: 1.5 };

function hunters(firearmId: string, kit: typeof bowKit): Hunter[] {
  return [
    {
      id: "odell",
      name: "Odell",
      standId: "stand-broad",
      firearmId,
      loadKg: { body: 84, ...kit },
      handed: "right",
      newcomer: false,
      harness: { madeOn: "2025-05", replaceBy: "2030-05", fallen: false },
      contact: "Contact One, DEMO",
    },
    {
      id: "fenna",
      name: "Fenna",
      standId: "stand-light",
      firearmId,
      loadKg: { body: 63, ...kit },
      handed: "left",
      newcomer: false,
      harness: { madeOn: "2023-02", replaceBy: "2028-02", fallen: false },
      contact: "Contact One, DEMO",
    },
  ];
}

const garrick: Hunter = {
  id: "garrick",
  name: "Garrick",
  standId: "stand-light",
  firearmId: "rifle",
  loadKg: { body: 104, ...rifleKit },
  handed: "right",
  newcomer: true,
  harness: { madeOn: null, replaceBy: null, fallen: false },
  contact: "Contact Two, DEMO",
};

export const trips: DemoTrip[] = [
  {
    id: "bow-clock-change",
    facts: {
      name: "Bow, clock change",
      from: "2027-11-05",
      to: "2027-11-08",
      species: "white-tailed deer",
      method: "bow",
      land: "private",
      hunters: hunters("bow", bowKit),
      base: "camp",
      vehicle,
      allowedSites: ALL_SITES,
      // Orchard Corner's dead limb and Sunday's thunder stop what was written for them.
      sits: demoSits([
        "2027-11-05 morning odell lower-bench run, fenna icehouse-gully gully",
        "2027-11-05 evening odell landing-west stones, fenna orchard-corner brook",
        "2027-11-06 morning odell upper-bench spur",
        "2027-11-06 evening fenna hatch-gap north",
        "2027-11-07 morning odell hatch-gap north, fenna landing-west stones",
        "2027-11-07 evening odell upper-bench spur",
        "2027-11-08 morning fenna icehouse-gully gully",
        "2027-11-08 evening odell lower-bench run, fenna hatch-gap north",
      ]),
      askAfterMin: 60,
      checkIn: "Camp board, when you leave and when you are back.",
      notes: "Clocks go back on Sunday, November 7, at 02:00.",
    },
    forecast: {
      source: "Demo forecast (invented)",
      issuedAt: "2027-11-05T04:00:00-04:00",
      units,
      days: [
        {
          localDate: "2027-11-05",
          rows: "05 NW 3 g6 .1 30; 09 NW 5 g9 .1 40; 13 W 6 g11 .2 51; 16 W 3 g6 .1 47; 18 calm .0 38",
        },
        {
          localDate: "2027-11-06",
          issuedAt: "2027-11-05T16:00:00-04:00",
          rows: "05 calm .0 27; 08 W 3 g6 .0 35; 12 W 7 g12 .2 52; 15 SW 6 g11 .4 52; 17 S 12 g20 .7 48",
        },
        {
          localDate: "2027-11-07",
          issuedAt: "2027-11-06T16:00:00-04:00",
          rows: "05 S 6 g12 .8 46; 09 S 11 g20 .9 53; 13 S 13 g25 1 57 thunder rain .2; 17 S 13 g25 1 57 thunder; 18 SW 9 g18 .9 52 rain .05",
        },
        {
          localDate: "2027-11-08",
          rows: "05 NW 15 g27 .5 35; 10 NW 19 g29 .4 39; 15 NW 12 g22 .2 38; 17 NNW 6 g12 .1 32",
        },
      ],
    },
  },
  {
    id: "rifle-first-week",
    facts: {
      name: "Rifle, first week",
      from: "2027-11-12",
      to: "2027-11-15",
      species: "white-tailed deer",
      method: "rifle",
      land: "private",
      hunters: [...hunters("rifle", rifleKit), garrick],
      base: "camp",
      vehicle,
      allowedSites: ALL_SITES,
      // Garrick is too heavy for the stand he asks for. Landing West and Landing East are never taken together.
      sits: demoSits([
        "2027-11-12 morning odell upper-bench spur, garrick hatch-gap north",
        "2027-11-12 evening fenna lower-bench run",
        "2027-11-13 morning odell landing-west stones, fenna icehouse-gully gully",
        "2027-11-13 evening fenna upper-bench spur, garrick hatch-gap north",
        "2027-11-15 morning odell lower-bench run",
        "2027-11-15 evening fenna landing-east track",
      ]),
      askAfterMin: 90,
      callAfterMin: 180,
      checkIn: "Camp board, when you leave and when you are back.",
      notes: "Rifles on Saturday and Monday alone. Friday and Sunday are for the bow.",
    },
    forecast: {
      source: "Demo forecast (invented)",
      issuedAt: "2027-11-12T05:00:00-05:00",
      units,
      days: [
        {
          localDate: "2027-11-12",
          rows: "05 WNW 4 g8 .2 31; 11 W 8 g14 .4 44; 15 W 5 g9 .3 42; 17 calm .2 34",
        },
        {
          localDate: "2027-11-13",
          rows: "05 calm .0 25; 08 E 3 g6 .1 32; 12 ESE 6 g10 .3 45; 16 SE 5 g9 .5 43; 17 W 6 g12 .6 39",
        },
        {
          localDate: "2027-11-14",
          issuedAt: "2027-11-13T17:00:00-05:00",
          rows: "05 W 6 g12 .3 33; 12 NW 10 g18 .3 41; 16 N 5 g9 .1 36",
        },
      ],
    },
  },
];
