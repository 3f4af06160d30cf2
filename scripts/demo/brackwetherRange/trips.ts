import type { TripFile } from "../../content/schema/tripSchema.ts";
import { type DemoTrip, demoSits } from "../demoTrip.ts";

type Hunter = TripFile["hunters"][number];

const units = { speed: "kmh", temp: "C", rain: "mm" } as const;
const vehicle = { text: "One car at the Road end", plate: "DEMO 417" };

// Worn gear and pack are 14 kg together.
const kit = { clothing: 4, harness: 1.5, pack: 3, weapon: 4, water: 1.5 };

const marrit: Hunter = {
  id: "marrit",
  name: "Marrit",
  standId: "stand-light",
  firearmId: "rifle",
  loadKg: { body: 71, ...kit },
  handed: "right",
  newcomer: false,
  harness: { madeOn: "2024-06", replaceBy: "2029-06", fallen: false },
  contact: "Contact Three, DEMO",
};

const teague: Hunter = {
  id: "teague",
  name: "Teague",
  standId: "stand-broad",
  firearmId: "rifle",
  loadKg: { body: 92, ...kit },
  handed: "right",
  newcomer: false,
  harness: { madeOn: "2022-04-03", replaceBy: "2027-04-03", fallen: false },
  contact: "Contact Three, DEMO",
};

const isla: Hunter = {
  id: "isla",
  name: "Isla",
  standId: "stand-light",
  firearmId: "rifle",
  loadKg: { body: 58, ...kit },
  handed: "right",
  newcomer: true,
  harness: { madeOn: "2026-08", replaceBy: "2031-08", fallen: false },
  contact: "Contact Four, DEMO",
};

export const trips: DemoTrip[] = [
  {
    id: "roar-clock-change",
    facts: {
      name: "Roar, clock change",
      from: "2027-04-02",
      to: "2027-04-05",
      species: "red deer",
      method: "rifle",
      land: "public",
      hunters: [marrit, teague],
      base: "billhook-hut",
      vehicle,
      allowedSites: ["wallow-side", "tin-saddle", "billhook-forks", "flat-west", "flat-east"],
      // Marrit's stand does not fit the forks, Wallow Side's limb is dead, Teague's harness runs out on Saturday, Monday storms.
      sits: demoSits([
        "2027-04-02 morning marrit flat-east track, teague billhook-forks flat",
        "2027-04-02 evening marrit billhook-forks flat, teague flat-west bank",
        "2027-04-03 morning marrit tin-saddle spur, teague flat-west bank",
        "2027-04-03 evening marrit flat-east track, teague wallow-side bank",
        "2027-04-04 morning marrit flat-west bank, teague tin-saddle spur",
        "2027-04-04 evening marrit flat-east track",
        "2027-04-05 morning marrit flat-west bank",
        "2027-04-05 evening marrit tin-saddle spur",
      ]),
      askAfterMin: 90,
      callAfterMin: 180,
      checkIn: "Hut radio at 20:00 each evening.",
      notes: "Clocks go back on Sunday 4 April at 03:00. Party Kettle, block B.",
    },
    forecast: {
      source: "Demo mountain forecast (invented)",
      issuedAt: "2027-04-01T18:00:00+13:00",
      units,
      days: [
        {
          localDate: "2027-04-02",
          rows: "05 calm .0 3; 09 NW 6 g12 .1 9; 13 NW 12 g22 .3 15; 17 NW 7 g14 .2 12; 20 calm .1 7",
        },
        {
          localDate: "2027-04-03",
          rows: "05 calm .1 2; 09 E 6 g12 .3 8; 13 E 14 g24 .4 13; 18 SE 14 g25 .4 9; 21 S 20 g35 .9 5",
        },
        {
          localDate: "2027-04-04",
          rows: "05 S 14 g28 .9 2 rain 1; 10 SW 12 g24 .7 6; 15 SW 8 g16 .4 8; 18 calm .1 4",
        },
        {
          localDate: "2027-04-05",
          rows: "05 calm .0 -1; 09 N 5 g10 .3 6; 12 NW 18 g34 .7 12; 14 NW 30 g52 1 13 thunder rain 6; 18 NW 26 g48 1 11 rain 8",
        },
      ],
    },
  },
  {
    id: "late-roar",
    facts: {
      name: "Late roar",
      from: "2027-04-16",
      to: "2027-04-18",
      species: "red deer",
      method: "rifle",
      land: "public",
      hunters: [marrit, isla],
      base: "billhook-hut",
      vehicle,
      allowedSites: ["tin-saddle", "billhook-forks", "flat-west", "flat-east"],
      sits: demoSits([
        "2027-04-16 morning marrit tin-saddle spur, isla flat-east track",
        "2027-04-16 evening isla flat-east track",
        "2027-04-17 morning isla flat-west bank",
        "2027-04-18 morning marrit tin-saddle spur, isla flat-east track",
      ]),
      askAfterMin: 60,
      checkIn: "Hut radio at 20:00 each evening.",
      notes: "Party Kettle, block B. Isla is new.",
    },
    forecast: {
      source: "Demo mountain forecast (invented)",
      issuedAt: "2027-04-15T20:00:00+12:00",
      units,
      days: [
        {
          localDate: "2027-04-16",
          rows: "05 calm .2 4; 09 NW 8 g15 .4 9; 13 NW 16 g28 .5 14; 17 W 8 g16 .4 11; 18 SE 9 g18 .5 9",
        },
        {
          localDate: "2027-04-17",
          rows: "05 SE 6 g12 .4 5; 10 E 9 g17 .4 9; 15 E 10 g18 .3 11; 18 E 4 g9 .2 8",
        },
        {
          localDate: "2027-04-18",
          issuedAt: "2027-04-16T20:00:00+12:00",
          rows: "05 calm .0 1; 09 NE 4 g8 .1 7; 13 N 10 g18 .3 13",
        },
      ],
    },
  },
];
