import type { DemoArea } from "../demoArea.ts";
import { facts } from "./facts.ts";
import { features } from "./features.ts";
import { ground } from "./ground.ts";
import { prose } from "./prose.ts";
import { cameras, wind } from "./records.ts";
import { sites } from "./sites.ts";
import { trips } from "./trips.ts";

/** A wooded hollow in the northern hemisphere: real sun, moon and magnetic north, invented ground, people and rules. */
export const turnpailHollow: DemoArea = {
  id: "turnpail-hollow",
  timezone: "America/New_York",
  corner: { zone: { number: 18, hemisphere: "N" }, eastingM: 260_000, northingM: 4_588_000 },
  ground,
  terrain: "terrain.tif",
  hole: null,
  facts,
  features,
  sites,
  trips,
  cameras,
  wind,
  roster: null,
  prose,
};
