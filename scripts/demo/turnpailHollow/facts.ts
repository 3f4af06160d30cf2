import type { AreaFile } from "../../content/schema/areaSchema.ts";
import type { LocalFrame } from "../localFrame.ts";
import { shootingLight } from "./shootingLight.ts";

const SPECIES = "white-tailed deer";

/** area.json of Turnpail Hollow. */
export function facts(frame: LocalFrame): Partial<AreaFile> {
  return {
    name: "Turnpail Hollow",
    summary:
      "A wooded hollow that opens south, ringed by a horseshoe ridge. Three friends share it with a bow and a rifle.",
    demonstration: true,
    centre: frame.place("2000,2000"),
    timezone: "America/New_York",
    locale: "en-US",
    units: "us",
    season: [
      {
        species: SPECIES,
        from: "2027-10-02",
        to: "2027-12-05",
        method: "bow",
        land: "private",
        source: "Demo State Rule 4-1 (invented)",
        checkedOn: "2027-09-20",
      },
      {
        species: SPECIES,
        from: "2027-11-13",
        to: "2027-12-05",
        method: "rifle",
        land: "private",
        source: "Demo State Rule 4-2 (invented)",
        checkedOn: "2026-08-11",
      },
    ],
    shootingLight: shootingLight(SPECIES),
    setbacks: [
      {
        featureKind: "building",
        weaponClass: "rifle",
        distanceM: 137.2,
        asWritten: "150 yd from a building that is lived in",
        waiver: "written",
        source: "Demo State Rule 7-3 (invented)",
        checkedOn: "2027-09-20",
      },
      {
        featureKind: "building",
        weaponClass: "bow",
        distanceM: 45.7,
        asWritten: "50 yd from a building that is lived in",
        waiver: "written",
        source: "Demo State Rule 7-3 (invented)",
        checkedOn: "2027-09-20",
      },
    ],
    permission: [
      {
        id: "home-hollow",
        kind: "landholder, in writing",
        holder: "Owner of Turnpail Farm (invented)",
        reference: "permit ref TH-DEMO-0417",
        conditions: ["Two vehicles at most.", "No new cuts over 1 in.", "Stands out by December 12."],
        from: "2027-09-01",
        to: "2027-12-31",
        source: "Letter of the owner (invented)",
        checkedOn: "2027-09-01",
      },
      {
        id: "west-fields",
        kind: "landholder",
        block: "west-fields",
        holder: "Owner of the west fields (invented)",
        conditions: ["Ask the owner."],
        from: "2026-09-01",
        to: "2027-08-31",
        source: "Spoken leave (invented)",
        checkedOn: "2026-09-01",
      },
    ],
    colourRule: {
      text: "Bright color, 250 sq in on chest and head, from November 13.",
      source: "Demo State Rule 5-1 (invented)",
      checkedOn: "2027-09-20",
    },
    standRules: {
      text: "No new cuts over 1 in. Stands out by December 12.",
      source: "Letter of the owner (invented)",
      checkedOn: "2027-09-01",
      from: "2027-09-01",
      removeBy: "2027-12-12",
    },
    emergency: {
      number: "DEMO: write your local number",
      nearestHospital: "Demo General Hospital, 41 km by road (invented)",
      nearestRoadAccess: frame.place("2610,830"),
      helicopterSpot: { feature: "helicopter-spot", sizeM: 40, noWires: true },
      radio: "channel demo 3",
      coverage: "None below 600 m, weak at Hatch Gap.",
      contacts: [{ name: "Contact One, DEMO", role: "knows the plan", phone: "DEMO: write the number" }],
    },
    hazards: [
      {
        name: "Slick ford",
        where: "Slab Ford",
        season: "after rain",
        advice: "Over the knee after 1 in of rain. Do not cross then.",
      },
      {
        name: "Old foundation hole",
        where: "above the old orchard",
        advice: "Keep to the trail in the dark.",
      },
      {
        name: "Dying ash trees",
        where: "the orchard side",
        advice: "Look up before you stop. Do not climb an ash there.",
      },
      {
        name: "Ticks",
        where: "everywhere",
        season: "until hard frost",
        advice: "Check yourself each evening.",
      },
    ],
    camps: [{ id: "camp", name: "Camp", position: frame.place("2635,885") }],
    parkings: [
      { id: "lower-parking", name: "Lower parking", position: frame.place("2610,830"), places: 2 },
      { id: "gap-parking", name: "Gap parking", position: frame.place("1830,3950") },
    ],
    blocks: [
      { id: "west-side", name: "West side", centre: frame.place("1470,1590") },
      { id: "east-side", name: "East side", centre: frame.place("2750,1350") },
      { id: "north-gap", name: "North gap", centre: frame.place("1950,3250") },
      { id: "west-fields", name: "West Fields", centre: frame.place("1022,475") },
    ],
    headTorch: "red head lamp, spare in the pack",
    asOf: "2027-11-04T12:00:00-04:00",
  };
}
