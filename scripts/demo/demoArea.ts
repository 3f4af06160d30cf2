import type { AreaFile } from "../content/schema/areaSchema.ts";
import type { RosterFile } from "../content/schema/rosterSchema.ts";
import type { DemoCamera } from "./cameraFiles.ts";
import type { DemoSite } from "./demoSite.ts";
import type { DemoTrip } from "./demoTrip.ts";
import type { GroundPlan } from "./groundPlan.ts";
import type { BoxCorner, LocalFrame } from "./localFrame.ts";
import type { LocalPoint } from "./localPoints.ts";
import type { DemoFeature } from "./mapFile.ts";
import type { WindPlan } from "./windRecord.ts";

/** Everything one demonstration area is generated from. Places are local metres, bearings grid degrees. */
export interface DemoArea {
  id: string;
  timezone: string;
  corner: BoxCorner;
  ground: GroundPlan;
  terrain: "terrain.tif" | "terrain.asc";
  /** posts without a height, opposite corners included; null = none */
  hole: { from: LocalPoint; to: LocalPoint } | null;
  facts(frame: LocalFrame): Partial<AreaFile>;
  features: DemoFeature[];
  sites: DemoSite[];
  trips: DemoTrip[];
  cameras: DemoCamera[];
  wind: WindPlan;
  roster: RosterFile | null;
  /** prose by file path from the folder of the area */
  prose: Record<string, string>;
}
