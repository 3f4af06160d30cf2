import type { DemoArea } from "../demoArea.ts";
import { facts } from "./facts.ts";
import { features } from "./features.ts";
import { ground } from "./ground.ts";
import { prose } from "./prose.ts";
import { cameras, roster, wind } from "./records.ts";
import { sites } from "./sites.ts";
import { trips } from "./trips.ts";

/** A steep valley in the southern hemisphere: real sun, moon and magnetic north, invented ground, people and rules. */
export const brackwetherRange: DemoArea = {
  id: "brackwether-range",
  timezone: "Pacific/Auckland",
  corner: { zone: { number: 59, hemisphere: "S" }, eastingM: 590_000, northingM: 5_270_000 },
  ground,
  terrain: "terrain.asc",
  hole: { from: { x: 600, y: 2900 }, to: { x: 620, y: 2920 } },
  facts,
  features,
  sites,
  trips,
  cameras,
  wind,
  roster,
  prose,
};
