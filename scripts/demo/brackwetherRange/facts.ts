import type { AreaFile } from "../../content/schema/areaSchema.ts";
import type { ShootingLayers } from "../../content/schema/shootingRuleSchema.ts";
import type { LocalFrame } from "../localFrame.ts";

const SPECIES = "red deer";
const SET_BACK = {
  weaponClass: "rifle",
  distanceM: 200,
  asWritten: "200 m from a hut, a marked track or a building that is lived in",
  waiver: "none",
  source: "Demo Forest Permit, condition 7 (invented)",
  checkedOn: "2027-02-20",
} as const;

/** area.json of Brackwether Range. */
export function facts(frame: LocalFrame): Partial<AreaFile> {
  return {
    name: "Brackwether Range",
    summary:
      "Four blocks of beech forest on both sides of one steep valley, shared by the parties of a club.",
    demonstration: true,
    centre: frame.place("2000,2000"),
    timezone: "Pacific/Auckland",
    locale: "en-NZ",
    units: "metric",
    season: [
      {
        species: SPECIES,
        from: "2027-03-01",
        to: "2027-05-31",
        method: "rifle",
        land: "public",
        source: "Demo Forest Permit, condition 3 (invented)",
        checkedOn: "2027-02-20",
      },
    ],
    shootingLight: shootingLight(),
    setbacks: ["building", "track", "camp"].map((featureKind) => ({ featureKind, ...SET_BACK })),
    permission: [
      {
        id: "blocks-abc",
        kind: "club permit",
        holder: "Brackwether Valley Hunting Club (invented)",
        reference: "BW-DEMO-2291",
        conditions: ["Stay in your block, also on the way home.", "No lights for hunting."],
        from: "2027-03-01",
        to: "2027-05-31",
        source: "Demo Forest Permit (invented)",
        checkedOn: "2027-02-20",
      },
      {
        id: "block-d",
        kind: "landholder's leave",
        block: "block-d",
        holder: "Landholder of the west block (invented)",
        conditions: ["Ask the landholder."],
        from: "2026-02-01",
        to: "2027-01-31",
        source: "Letter of the landholder (invented)",
        checkedOn: "2026-02-01",
      },
    ],
    followUpRule: {
      text: "At night follow a wounded animal unloaded only, with the club officer told.",
      source: "Club rule 9 (invented)",
      checkedOn: "2027-02-20",
    },
    emergency: {
      number: "DEMO: write your local number",
      nearestHospital: "Demo Base Hospital, 63 km by road (invented)",
      nearestRoadAccess: frame.place("3900,1710"),
      helicopterSpot: { feature: "helicopter-spot", sizeM: 40, noWires: true },
      radio: "hut radio, demo 5",
      coverage: "None but at Tin Saddle.",
      officer: { name: "Club officer, DEMO", phone: "DEMO: write the number" },
      contacts: [{ name: "Contact Three, DEMO", role: "knows the plan", phone: "DEMO: write the number" }],
    },
    hazards: [
      {
        name: "Fords",
        where: "Lower ford and Upper ford",
        season: "after 20 mm of rain in 12 h",
        advice: "Over the knee then. Do not cross; there is no bridge.",
      },
      {
        name: "Snow",
        where: "above 1000 m",
        season: "after a southerly",
        advice: "Leave the saddle to a better day.",
      },
      {
        name: "Wasps",
        where: "warm beech",
        season: "until frost",
        advice: "Look for nests before you climb.",
      },
      { name: "Slip edge", where: "above Tawny Slip", advice: "Stay 5 m back from the edge." },
      {
        name: "Public",
        where: "Valley track",
        season: "all weekend",
        advice: "Unload before you step on the track.",
      },
    ],
    camps: [
      { id: "billhook-hut", name: "Billhook Hut", position: frame.place("3350,1790") },
      { id: "fly-camp", name: "Fly camp", position: frame.place("1500,1985") },
    ],
    parkings: [{ id: "road-end", name: "Road end", position: frame.place("3900,1710"), places: 3 }],
    blocks: [
      { id: "block-a", name: "Block A", centre: frame.place("1150,2700") },
      { id: "block-b", name: "Block B", centre: frame.place("2900,2500") },
      { id: "block-c", name: "Block C", centre: frame.place("2700,1100") },
      { id: "block-d", name: "Block D", centre: frame.place("1000,1150") },
    ],
    headTorch: "head lamp, spare in the pack",
    asOf: "2027-04-01T12:00:00+13:00",
  };
}

/** The permit forbids the night; the club's rule ends the day sooner. */
function shootingLight(): ShootingLayers {
  return {
    law: [
      {
        id: "forest-permit-2027",
        jurisdiction: "Demo Forest (invented)",
        source: {
          citation: "Demo Forest Permit, condition 3 (invented)",
          checkedOn: "2027-02-20",
          checkedBy: "Marrit",
          status: "confirmed",
        },
        valid: { from: "2027-03-01", to: "2027-05-31" },
        applies: { species: [SPECIES], method: ["rifle"], land: ["any"] },
        reading: "forbidden",
        reference: { kind: "site" },
        windows: [{ start: { anchor: "sunset", offsetMin: 30 }, end: { anchor: "sunrise", offsetMin: -30 } }],
        rounding: "safe",
        exceptionsText: "No lights.",
      },
    ],
    clubRule: [
      {
        id: "last-shot",
        jurisdiction: "Brackwether Valley Hunting Club (invented)",
        source: { citation: "Club rule 4 (invented)", checkedOn: "2027-02-20", status: "confirmed" },
        valid: { from: "2027-01-01", to: "2027-12-31" },
        applies: { species: ["any"], method: ["any"], land: ["any"] },
        reading: "allowed",
        reference: { kind: "site" },
        windows: [{ start: { anchor: "clock", at: "00:00" }, end: { anchor: "sunset", offsetMin: 15 } }],
        rounding: "safe",
      },
    ],
  };
}
