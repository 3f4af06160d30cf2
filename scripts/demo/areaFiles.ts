import { jsonText } from "../publish/jsonText.ts";
import { asciiGrid, projectionText } from "./asciiGrid.ts";
import { cameraFiles } from "./cameraFiles.ts";
import { carveGround } from "./carveGround.ts";
import type { DemoArea } from "./demoArea.ts";
import { siteFileOf } from "./demoSite.ts";
import { tripFileOf } from "./demoTrip.ts";
import { geoTiff } from "./geoTiff.ts";
import { DEMO_LATTICE } from "./groundPlan.ts";
import { localFrame } from "./localFrame.ts";
import { mapFile } from "./mapFile.ts";
import { type SiteGround, siteGrounds } from "./siteGround.ts";
import { windRecord } from "./windRecord.ts";

/** Files of an area by path from its folder, text or bytes, and the ground that was carved at its sites. */
export interface AreaFiles {
  files: Map<string, string | Uint8Array>;
  grounds: SiteGround[];
}

/**
 * Every file of a demonstration area. The same description gives the same bytes.
 *
 * @throws {RangeError} when the carved ground at a site is too far from the site table; the message has all figures
 */
export function areaFiles(area: DemoArea): AreaFiles {
  const frame = localFrame(area.corner);
  const heightsM = carveGround(area.ground, DEMO_LATTICE);
  const grounds = siteGrounds(area.sites, heightsM, DEMO_LATTICE);
  const faults = grounds.flatMap((ground) => ground.faults);
  if (faults.length > 0)
    throw new RangeError(`the ground of ${area.id} misses its site table: ${faults.join("; ")}`);

  const files = new Map<string, string | Uint8Array>();
  files.set("area.json", linkedText("area", "", area.facts(frame)));
  files.set("map.geojson", linkedText("map", "", mapFile(area.features, frame)));
  for (const site of area.sites)
    files.set(`sites/${site.id}.json`, linkedText("site", "../", siteFileOf(site, frame)));
  for (const trip of area.trips)
    files.set(`trips/${trip.id}.json`, linkedText("trip", "../", tripFileOf(trip)));
  for (const camera of area.cameras) {
    const { facts, table } = cameraFiles(camera, area.timezone, frame);
    files.set(`cameras/${camera.id}.json`, linkedText("camera", "../", facts));
    files.set(`cameras/${camera.id}.csv`, table);
  }
  if (area.roster !== null) files.set("roster.json", linkedText("roster", "", area.roster));
  files.set(`wind/${area.wind.file}`, windRecord(area.wind, area.timezone));
  for (const [path, text] of Object.entries(area.prose)) files.set(path, `${text.trim()}\n`);
  addTerrain(files, area, withHole(heightsM, area.hole));
  return { files, grounds };
}

/** JSON that names its schema, so that an editor completes and checks it; `up` is the way from the file to its area's folder. */
function linkedText(kind: string, up: "" | "../", facts: object): string {
  return jsonText({ $schema: `${up}../../../data/schema/${kind}.schema.json`, ...facts });
}

function addTerrain(files: AreaFiles["files"], area: DemoArea, heightsM: Float64Array): void {
  if (area.terrain === "terrain.tif") {
    files.set("terrain.tif", geoTiff(heightsM, DEMO_LATTICE, area.corner));
  } else {
    files.set("terrain.asc", asciiGrid(heightsM, DEMO_LATTICE, area.corner));
    files.set("terrain.prj", projectionText(area.corner));
  }
}

function withHole(heightsM: Float64Array, hole: DemoArea["hole"]): Float64Array {
  if (hole === null) return heightsM;
  const { westX, northY, spacingM, columns } = DEMO_LATTICE;
  const holed = heightsM.slice();
  for (let y = hole.from.y; y <= hole.to.y; y += spacingM) {
    for (let x = hole.from.x; x <= hole.to.x; x += spacingM) {
      holed[((northY - y) / spacingM) * columns + (x - westX) / spacingM] = Number.NaN;
    }
  }
  return holed;
}
