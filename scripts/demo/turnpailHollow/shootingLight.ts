import type { ShootingLayers } from "../../content/schema/shootingRuleSchema.ts";

/** The invented hours: the state's two rules, and the landholder's end by the clock. */
export function shootingLight(species: string): ShootingLayers {
  return {
    law: [
      {
        id: "bow-2027",
        jurisdiction: "Demo State (invented)",
        source: {
          citation: "Demo State Rule 4-1 (invented)",
          checkedOn: "2027-09-20",
          checkedBy: "Odell",
          status: "confirmed",
        },
        valid: { from: "2027-10-02", to: "2027-12-05" },
        applies: { species: [species], method: ["bow"], land: ["any"] },
        reading: "allowed",
        reference: { kind: "site" },
        windows: [{ start: { anchor: "sunrise", offsetMin: -30 }, end: { anchor: "sunset", offsetMin: 30 } }],
        rounding: "safe",
      },
      {
        id: "rifle-2027",
        jurisdiction: "Demo State (invented)",
        source: {
          citation: "Demo State Rule 4-2 (invented)",
          checkedOn: "2026-08-11",
          checkedBy: "Odell",
          status: "confirmed",
        },
        valid: { from: "2027-11-13", to: "2027-12-05" },
        applies: { species: [species], method: ["rifle"], land: ["any"], closedWeekdays: ["sun"] },
        reading: "allowed",
        reference: { kind: "site" },
        windows: [{ start: { anchor: "sunrise", offsetMin: -30 }, end: { anchor: "sunset", offsetMin: 0 } }],
        rounding: "safe",
      },
    ],
    landRule: [
      {
        id: "no-shot-after-1815",
        jurisdiction: "Turnpail Farm (invented)",
        source: { citation: "Letter of the owner (invented)", checkedOn: "2027-09-01", status: "confirmed" },
        valid: { from: "2027-09-01", to: "2027-12-31" },
        applies: { species: ["any"], method: ["any"], land: ["any"] },
        reading: "allowed",
        reference: { kind: "site" },
        windows: [{ start: { anchor: "clock", at: "00:00" }, end: { anchor: "clock", at: "18:15" } }],
        rounding: "safe",
      },
    ],
  };
}
