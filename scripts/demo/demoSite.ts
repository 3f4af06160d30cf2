import type { AreaFile } from "../content/schema/areaSchema.ts";
import type { LocalNote, SiteFile, TREE_TICKS, WalkInFile } from "../content/schema/siteSchema.ts";
import type { LocalFrame } from "./localFrame.ts";

/** One row of a site table: bearings in grid degrees, `at` in local metres, approaches and lanes in a short form. */
export interface DemoSite {
  number: number;
  id: string;
  name: string;
  block: AreaFile["blocks"][number]["id"];
  at: string;
  /** what the ground must come out as: metres, degrees, the way it faces in grid degrees, null where it does not matter */
  ground: { heightM: number; slopeDeg: number; facingDeg: number | null };
  overlooks: SiteFile["overlooks"];
  overlooksName: string;
  tree: DemoTree;
  platformM: number;
  facingDeg: number;
  cover: SiteFile["cover"];
  morning: DemoApproach[];
  evening: DemoApproach[];
  /** "bearing/width/range"; with "seen" when the ground behind was looked at in daylight */
  lanes: string[];
  restDays: number;
  shareable: boolean;
  walkIns: WalkInFile[];
  localNotes?: LocalNote[];
  privateNotes?: string;
}

type Tick = (typeof TREE_TICKS)[number];

export interface DemoTree {
  species: string;
  girthMm: number;
  checkedOn: string;
  checkedBy: string;
  fault?: Tick[];
  notLookedAt?: Tick[];
}

/** `sector` is "from-to", clockwise; `distance` is "nearest-farthest" in metres. */
export interface DemoApproach {
  id: string;
  name: string;
  sector: string;
  distance: string;
  use: number;
}

/** The site file of a row, with true bearings. */
export function siteFileOf(site: DemoSite, frame: LocalFrame): Partial<SiteFile> {
  return {
    number: site.number,
    name: site.name,
    block: site.block,
    overlooks: site.overlooks,
    overlooksName: site.overlooksName,
    position: frame.place(site.at),
    tree: treeOf(site.tree),
    platformHeightM: site.platformM,
    facingDeg: frame.trueDeg(site.facingDeg),
    seated: true,
    cover: site.cover,
    approaches: {
      morning: site.morning.map((approach) => approachOf(approach, frame)),
      evening: site.evening.map((approach) => approachOf(approach, frame)),
    },
    lanes: site.lanes.map((lane, index) => laneOf(lane, index, site.tree, frame)),
    walkIns: site.walkIns,
    rest: { afterSitDays: site.restDays },
    ...(site.localNotes ? { localNotes: site.localNotes } : {}),
    shareable: site.shareable,
    ...(site.privateNotes ? { privateNotes: site.privateNotes } : {}),
  };
}

function treeOf({
  species,
  girthMm,
  checkedOn,
  checkedBy,
  fault = [],
  notLookedAt = [],
}: DemoTree): SiteFile["tree"] {
  const tick = (name: Tick) => (fault.includes(name) ? "fault" : notLookedAt.includes(name) ? null : "clear");
  return {
    species,
    girthMm,
    measuredAtHeightM: 1.3,
    condition: {
      dead: tick("dead"),
      deadLimbs: tick("deadLimbs"),
      hollow: tick("hollow"),
      fungus: tick("fungus"),
      canker: tick("canker"),
      roots: tick("roots"),
      lean: tick("lean"),
      bark: tick("bark"),
      twinStem: tick("twinStem"),
      nestOrWires: tick("nestOrWires"),
      leanDeg: 2,
      checkedOn,
      checkedBy,
    },
  };
}

function approachOf({ id, name, sector, distance, use }: DemoApproach, frame: LocalFrame) {
  const [from, to] = pair(sector);
  return {
    id,
    name,
    bearingsDeg: [frame.trueDeg(from), frame.trueDeg(to)] as [number, number],
    distanceM: pair(distance),
    use,
  };
}

function laneOf(lane: string, index: number, { checkedBy, checkedOn }: DemoTree, frame: LocalFrame) {
  const [figures = "", seen] = lane.split(" ");
  const [bearing = Number.NaN, widthDeg = Number.NaN, maxRangeM = Number.NaN] = figures
    .split("/")
    .map(Number);
  return {
    id: String.fromCharCode(65 + index),
    bearingDeg: frame.trueDeg(bearing),
    widthDeg,
    maxRangeM,
    seenOnGround: seen === "seen" ? { by: checkedBy, on: checkedOn } : null,
  };
}

function pair(text: string): [number, number] {
  const [from = Number.NaN, to = Number.NaN] = text.split("-").map(Number);
  return [from, to];
}
