import { mkdir, rename, symlink } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { PROBLEM_CODES } from "../../scripts/content/problemCodes.ts";
import { readContent } from "../../scripts/content/readContent.ts";
import {
  AREA,
  area,
  type Files,
  features,
  forecastCsv,
  hunter,
  inFolder,
  map,
  readChanged,
  rule,
  site,
  told,
  trip,
  wholeContent,
} from "./contentFolder.ts";

const AREA_JSON = `${AREA}/area.json`;
const AREA_MD = `${AREA}/area.md`;
const MAP = `${AREA}/map.geojson`;
const SITE = `${AREA}/sites/larch-bench.json`;
const SITE_2 = `${AREA}/sites/second.json`;
const TRIP = `${AREA}/trips/april.json`;
const FORECAST = `${AREA}/trips/april.forecast.csv`;
const CAMERA_CSV = `${AREA}/cameras/bench-camera.csv`;

const withArea = (change: object): Files => ({ [AREA_JSON]: { ...area, ...change } });
const withSite = (change: object): Files => ({ [SITE]: { ...site, ...change } });
const withTrip = (change: object): Files => ({ [TRIP]: { ...trip, ...change } });
const withMap = (...list: object[]): Files => ({ [MAP]: map(features.trail, features.way, ...list) });
const withProse = (text: string): Files => ({ [AREA_MD]: text });
const ofKind = (kind: string, type: string, coordinates: unknown) => ({
  type: "Feature",
  geometry: { type, coordinates },
  properties: { id: "odd", kind },
});
const second = { ...site, number: 4, grid: undefined };
const forecastRows = (rows: string): Files => ({ [FORECAST]: `${forecastCsv.split("\n")[0]}\n${rows}\n` });

describe("a whole small area", () => {
  test("has no problem and is given in order", async () => {
    const { areas, shared, problems } = await readChanged({ [SITE_2]: { ...second, number: 2 } });
    expect(told(problems)).toBe("");
    expect(areas.map(({ id }) => id)).toEqual(["larch-valley"]);
    const [read] = areas;
    expect(read?.sites.map(({ id, facts }) => [facts.number, id])).toEqual([
      [2, "second"],
      [3, "larch-bench"],
    ]);
    expect(read?.prose?.sections[0]?.html).toContain('href="sites/larch-bench.html"');
    expect(read?.prose?.sections[0]?.html).toContain('href="#prose-the-air"');
    expect(read?.trips[0]?.facts.forecast?.rows).toEqual([
      {
        localDate: "2027-04-02",
        hour: "05:00",
        windFrom: "NW",
        windSpeed: 6,
        gust: 12,
        cloudShare: 0.1,
        temp: 9,
      },
      {
        localDate: "2027-04-02",
        hour: "13:00",
        windFrom: 315,
        windSpeed: null,
        gust: null,
        cloudShare: 0.3,
        temp: 15,
      },
    ]);
    expect(read?.cameras[0]?.rows).toEqual([
      { at: "2027-03-01T06:10:00", species: "red deer", class: null, count: 2, direction: null },
    ]);
    expect(read?.sourceFiles.length).toBe(11);
    expect(shared.stands).toHaveLength(1);
  });

  test("keeps what a later step reads, and says nothing about it", async () => {
    const { problems } = await readChanged({
      [`${AREA}/sits.csv`]: "anything",
      [`${AREA}/wind/station.csv`]: "anything",
      [`${AREA}/cameras/camtrap-dp/datapackage.json`]: "{",
      [`${AREA}/.DS_Store`]: "x",
    });
    expect(told(problems)).toBe("");
  });

  test("warns of a saved forecast that it can not read yet, so that no day loses its forecast in silence", async () => {
    const file = `${AREA}/trips/april.forecast.json`;
    const { problems } = await readChanged({ [file]: "{" });
    expect(problems).toMatchObject([{ severity: "warning", code: "file-not-part" }]);
    expect(problems[0]?.file).toContain(file);
    expect(problems[0]?.fix).toContain("april.forecast.csv");
  });

  test("rules by a table are read from the folder of the area", async () => {
    const { areas, problems } = await readChanged({
      ...withArea({ shootingLight: { law: [{ ...rule, reference: { kind: "table", file: "hours.csv" } }] } }),
      [`${AREA}/hours.csv`]: "from,to,start,end\n12-16,01-15,06:00,16:45\n01-16,12-15,06:30,17:00\n",
    });
    expect(told(problems)).toBe("");
    expect(areas[0]?.shootingTables).toEqual({
      "hours.csv": [
        { from: "12-16", to: "01-15", start: "06:00", end: "16:45" },
        { from: "01-16", to: "12-15", start: "06:30", end: "17:00" },
      ],
    });
  });
});

interface Case {
  code: string;
  what: string;
  files: Files;
  file?: string;
  field?: string;
  fix?: string;
  warning?: true;
}

const cases: Case[] = [
  {
    code: "content-missing",
    what: "no content folder",
    files: Object.fromEntries(
      Object.keys(wholeContent)
        .filter((path) => path.startsWith("content"))
        .map((path) => [path, null]),
    ),
  },
  {
    code: "content-empty",
    what: "no area",
    files: {
      ...Object.fromEntries(
        Object.keys(wholeContent)
          .filter((path) => path.startsWith("content"))
          .map((path) => [path, null]),
      ),
      "content/areas/readme.txt": "x",
    },
  },
  { code: "file-missing", what: "a folder without area.json", files: { [AREA_JSON]: null }, file: AREA_JSON },
  {
    code: "file-missing",
    what: "prose without facts",
    files: { [`${AREA}/sites/third.md`]: "x" },
    file: `${AREA}/sites/third.md`,
  },
  {
    code: "file-missing",
    what: "a forecast without its trip",
    files: { [`${AREA}/trips/may.forecast.csv`]: forecastCsv },
  },
  {
    code: "file-missing",
    what: "a camera table without its camera",
    files: { [`${AREA}/cameras/x.csv`]: "at,species,count\n" },
  },
  {
    code: "file-missing",
    what: "a table of hours that is not there",
    files: withArea({
      shootingLight: { law: [{ ...rule, reference: { kind: "table", file: "hours.csv" } }] },
    }),
  },
  {
    code: "file-missing",
    what: "shared data without stands",
    files: { "data/stands.json": null },
    file: "data/stands.json",
  },
  { code: "file-empty", what: "an empty site file", files: { [SITE]: "" }, file: SITE },
  { code: "file-empty", what: "an empty forecast", files: { [FORECAST]: "" }, file: FORECAST },
  {
    code: "file-not-utf8",
    what: "Latin-1 bytes",
    files: { [AREA_MD]: new Uint8Array([0x48, 0xf6, 0x68, 0x65]) },
    file: AREA_MD,
  },
  {
    code: "file-too-large",
    what: "20 MB of Markdown",
    files: { [AREA_MD]: "text ".repeat(4_000_000) },
    file: AREA_MD,
  },
  { code: "file-too-large", what: "JSON over 2 MB", files: withArea({ headTorch: "x".repeat(2_000_001) }) },
  {
    code: "file-name",
    what: "a site file with capitals and spaces",
    files: { [`${AREA}/sites/North Bench.json`]: second },
    fix: "rename it to north-bench",
  },
  {
    code: "file-name",
    what: "an area folder that is no id",
    files: { "content/areas/East_Side/area.json": area },
  },
  {
    code: "file-not-part",
    what: "a program in the area",
    files: { [`${AREA}/area.11tydata.js`]: "throw 1" },
    warning: true,
  },
  {
    code: "file-not-part",
    what: "a template among the sites",
    files: { [`${AREA}/sites/x.njk`]: "{{ 1 }}" },
    warning: true,
  },
  {
    code: "file-not-part",
    what: "a page beside areas",
    files: { "content/index.html": "<p>" },
    warning: true,
  },
  {
    code: "file-not-part",
    what: "a misspelt folder",
    files: { [`${AREA}/site/x.json`]: second },
    warning: true,
    fix: "not part of a pack; did you mean sites?",
  },
  {
    code: "json-broken",
    what: "a missing comma",
    files: { [SITE]: '{"number": 1 "name": "x"}' },
    field: "line 1",
  },
  { code: "json-broken", what: "NaN", files: { [SITE]: '{"platformHeightM": NaN}' } },
  { code: "json-broken", what: "Infinity", files: { [SITE]: '{"platformHeightM": Infinity}' } },
  {
    code: "json-key-twice",
    what: "a key twice",
    files: { [SITE]: JSON.stringify(site).replace("{", '{"number": 5, ') },
    field: "number",
  },
  {
    code: "json-key-forbidden",
    what: "a __proto__ key",
    files: { [SITE]: JSON.stringify(site).replace("{", '{"__proto__": {"a": 1}, ') },
  },
  {
    code: "json-text",
    what: "an escape character in a name",
    files: withSite({ name: "a\u001b[2J" }),
    field: "name",
  },
  { code: "json-too-deep", what: "a thousand brackets", files: { [SITE]: "[".repeat(1000) } },
  {
    code: "markdown-front-matter",
    what: "a program in front matter",
    files: withProse("---js\n{ x: 1 }\n---\ntext"),
    file: AREA_MD,
    field: "line 1",
  },
  {
    code: "value-type",
    what: "an aspect as a word",
    files: withSite({ slope: { slopeDeg: 12, aspectDeg: "NE", reason: "r" } }),
    field: "slope.aspectDeg",
    fix: 'write "aspectDeg": 45',
  },
  { code: "value-type", what: "an area that is a list", files: { [AREA_JSON]: [] }, field: "" },
  {
    code: "value-choice",
    what: "a cover that is none",
    files: withSite({ cover: "timbr" }),
    field: "cover",
    fix: 'write "cover": "timber"',
  },
  {
    code: "value-form",
    what: "a date that does not exist",
    files: withTrip({ to: "2027-02-30" }),
    field: "to",
  },
  {
    code: "value-missing",
    what: "a trip without hunters",
    files: withTrip({ hunters: undefined }),
    field: "hunters",
  },
  {
    code: "value-range",
    what: "an aspect of 360",
    files: withSite({ facingDeg: 360 }),
    field: "facingDeg",
    fix: 'write "facingDeg": 0',
  },
  {
    code: "value-range",
    what: "a latitude of 168",
    files: withSite({ position: { lat: 168.6641, lon: -45.0305 } }),
    field: "position.lat",
    fix: 'lat and lon look exchanged: write { "lat": -45.0305, "lon": 168.6641 }',
  },
  {
    code: "value-rule",
    what: "girth and diameter",
    files: withSite({ tree: { species: "larch", girthMm: 900, diameterMm: 300, condition: {} } }),
  },
  {
    code: "setback-kind",
    what: "a set-back from a kind of feature that no map has",
    files: withArea({
      setbacks: [
        {
          featureKind: "house",
          weaponClass: "rifle",
          distanceM: 137,
          asWritten: "150 yd",
          waiver: "none",
          source: "s",
          checkedOn: "2027-02-01",
        },
      ],
    }),
    field: "setbacks.0.featureKind",
  },
  {
    code: "value-unknown-key",
    what: "a misspelt key",
    files: withArea({ timezon: "x" }),
    field: "timezon",
    fix: 'did you mean "timezone"?',
  },
  {
    code: "csv-broken",
    what: "an open quote",
    files: forecastRows('2027-04-02,05:00,"NW,6,12,0.1,9'),
    field: "line 2",
  },
  {
    code: "csv-columns",
    what: "a forecast with a column twice",
    files: { [FORECAST]: forecastCsv.replace("temp", "gust") },
    field: "line 1",
  },
  {
    code: "csv-ragged",
    what: "a short row",
    files: { [CAMERA_CSV]: "at,species,count\n2027-03-01 06:10,deer\n" },
    field: "line 2",
  },
  {
    code: "csv-value",
    what: "a detection on 31 February",
    files: { [CAMERA_CSV]: "at,species,count\n2027-02-31 06:10,deer,1\n" },
    field: "line 2, at",
  },
  {
    code: "csv-value",
    what: "a detection with an offset",
    files: { [CAMERA_CSV]: "at,species,count\n2027-02-21T06:10:00+13:00,deer,1\n" },
    field: "line 2, at",
  },
  {
    code: "csv-value",
    what: "two deer as a word",
    files: { [CAMERA_CSV]: "at,species,count\n2027-02-21 06:10,deer,two\n" },
    field: "line 2, count",
  },
  {
    code: "value-type",
    what: "a wind speed with its unit",
    files: forecastRows("2027-04-02,05:00,NW,6 km/h,12,0.1,9"),
    field: "line 2, windSpeed",
  },
  {
    code: "value-choice",
    what: "a wind from WNWN",
    files: forecastRows("2027-04-02,05:00,WNWN,6,12,0.1,9"),
    field: "line 2, windFrom",
  },
  {
    code: "date-order",
    what: "a season that ends before it starts",
    files: withArea({ season: [{ ...area.season[0], to: "2026-05-31" }] }),
    field: "season.0.to",
  },
  {
    code: "date-order",
    what: "a trip that ends before it starts",
    files: withTrip({ to: "2027-04-01" }),
    file: TRIP,
    field: "to",
  },
  {
    code: "date-order",
    what: "a permission that ends before it starts",
    files: withArea({
      permission: [
        {
          id: "p",
          kind: "permit",
          from: "2027-05-01",
          to: "2027-04-01",
          source: "s",
          checkedOn: "2027-02-01",
        },
      ],
    }),
  },
  { code: "trip-too-long", what: "32 days", files: withTrip({ to: "2027-05-03" }), field: "to" },
  {
    code: "date-outside",
    what: "a sit after the trip",
    files: withTrip({ sits: [{ ...trip.sits[0], localDate: "2027-04-06" }] }),
    field: "sits.0.localDate",
  },
  {
    code: "order-of-two",
    what: "the greater distance first",
    files: withSite({
      approaches: { morning: [{ id: "x", distanceM: [200, 20], use: 1, along: "bench-trail" }] },
    }),
    field: "approaches.morning.0.distanceM",
    fix: "write [20, 200]",
  },
  {
    code: "elevation-needed",
    what: "no terrain and no elevation",
    files: withArea({ elevationM: undefined }),
    field: "elevationM",
  },
  {
    code: "emergency-number",
    what: "a number to call for everybody",
    files: { "data/emergency.json": { call: ["Ring 112."], firstAid: [] } },
    field: "call.0",
  },
  {
    code: "forecast-head",
    what: "a forecast file without units",
    files: withTrip({ forecast: undefined }),
    field: "forecast",
  },
  {
    code: "forecast-twice",
    what: "two rows for one hour",
    files: forecastRows("2027-04-02,05:00,NW,6,12,0.1,9\n2027-04-02,05:00,S,6,12,0.1,9"),
    field: "line 3",
  },
  {
    code: "forecast-gust",
    what: "a gust below the wind",
    files: forecastRows("2027-04-02,05:00,NW,16,12,0.1,9"),
    field: "line 2, gust",
    warning: true,
  },
  {
    code: "grid-text",
    what: "a grid text that is none",
    files: withSite({ grid: "59G 15993 11006" }),
    field: "grid",
  },
  {
    code: "grid-differs",
    what: "a grid 20 m off",
    files: withSite({ grid: "59G LL 16013 11006" }),
    field: "grid",
  },
  {
    code: "grid-coarse",
    what: "a grid of 100 m",
    files: withSite({ grid: "59G LL 159 110" }),
    field: "grid",
    warning: true,
  },
  {
    code: "id-twice",
    what: "two hunters with one id",
    files: withTrip({ hunters: [hunter, hunter] }),
    field: "hunters.1.id",
  },
  {
    code: "id-twice",
    what: "a camp and a parking with one id",
    files: withArea({ parkings: [{ ...area.parkings[0], id: "hut" }, area.parkings[0]!] }),
    field: "parkings.0.id",
  },
  {
    code: "id-twice",
    what: "two map features with one id",
    files: withMap(features.trail),
    file: MAP,
    field: "features.2.properties.id",
  },
  {
    code: "id-unknown",
    what: "an unknown block",
    files: withSite({ block: "esat" }),
    field: "block",
    fix: 'write "block": "east"',
  },
  {
    code: "id-unknown",
    what: "an unknown stand of a site",
    files: withSite({ stand: { standId: "stand-b", labelled: null, placedOn: null, removeBy: null } }),
    field: "stand.standId",
  },
  {
    code: "id-unknown",
    what: "an unknown firearm",
    files: withTrip({ hunters: [{ ...hunter, firearmId: "bow" }] }),
    field: "hunters.0.firearmId",
  },
  {
    code: "id-unknown",
    what: "a walk-in from nowhere",
    files: withSite({ walkIns: [{ ...site.walkIns[0], from: "lodge" }] }),
    field: "walkIns.0.from",
  },
  {
    code: "id-unknown",
    what: "a walk-in along nothing",
    files: withSite({ walkIns: [{ ...site.walkIns[0], along: "creek-wey" }] }),
    field: "walkIns.0.along",
    fix: 'write "along": "creek-way"',
  },
  {
    code: "id-unknown",
    what: "an approach along nothing",
    files: withSite({ approaches: { morning: [{ ...site.approaches.morning[0], along: "x" }] } }),
    field: "approaches.morning.0.along",
  },
  {
    code: "id-unknown",
    what: "an approach in an unknown session",
    files: withSite({ approaches: { midday: [] } }),
    field: "approaches.midday",
  },
  {
    code: "id-unknown",
    what: "a note for an unknown session",
    files: withSite({ localNotes: [{ session: "dawn", note: "n", seenBy: "o", seenOn: "2027-03-01" }] }),
    field: "localNotes.0.session",
  },
  {
    code: "id-unknown",
    what: "an unknown base",
    files: withTrip({ base: "hat" }),
    field: "base",
    fix: 'write "base": "hut"',
  },
  {
    code: "id-unknown",
    what: "an unknown allowed site",
    files: withTrip({ allowedSites: ["larch-banch"] }),
    field: "allowedSites.0",
    fix: 'write "larch-bench"',
  },
  {
    code: "id-unknown",
    what: "a sit of an unknown hunter",
    files: withTrip({ sits: [{ ...trip.sits[0], hunter: "b" }] }),
    field: "sits.0.hunter",
  },
  {
    code: "id-unknown",
    what: "a sit by an unknown walk-in",
    files: withTrip({ sits: [{ ...trip.sits[0], walkIn: "ridge" }] }),
    field: "sits.0.walkIn",
  },
  {
    code: "id-unknown",
    what: "a roster row for an unknown block",
    files: {
      [`${AREA}/roster.json`]: {
        buffer: 0,
        rows: [{ block: "west", from: "2027-04-02", to: "2027-04-03", party: "P" }],
      },
    },
    field: "rows.0.block",
  },
  {
    code: "id-unknown",
    what: "a helicopter spot that is not drawn",
    files: withArea({ emergency: { helicopterSpot: { feature: "bench-trail" } } }),
    field: "emergency.helicopterSpot.feature",
  },
  {
    code: "id-unknown",
    what: "a forecast row of an unknown session",
    files: {
      [FORECAST]: "localDate,session,windFrom,windSpeed,gust,cloudShare,temp\n2027-04-02,noon,N,1,2,0,9\n",
    },
    field: "line 2, session",
  },
  {
    code: "later-than-as-of",
    what: "a rule checked in 2072",
    files: withArea({ season: [{ ...area.season[0], checkedOn: "2072-02-01" }] }),
    field: "season.0.checkedOn",
    warning: true,
  },
  {
    code: "link-target",
    what: "a link to a file that is not there",
    files: withProse("[x](sites/nowhere.md)"),
    field: "line 1",
  },
  {
    code: "link-target",
    what: "a link to a heading that is not there",
    files: withProse("# Air\n\n[x](#airs)"),
    field: "line 3",
    fix: "write #air",
  },
  { code: "link-target", what: "a link out of the area", files: withProse("[x](../../../etc/passwd)") },
  {
    code: "map-boundary",
    what: "two boundaries",
    files: withMap(features.boundary, { ...features.boundary, properties: { id: "b2", kind: "boundary" } }),
    field: "features.3.properties.kind",
  },
  {
    code: "map-far",
    what: "a gate in another country",
    files: withMap(ofKind("gate", "Point", [10.5, 47.1])),
    field: "features.2.geometry.coordinates",
  },
  {
    code: "map-geometry",
    what: "a boundary as a line",
    files: withMap(ofKind("boundary", "LineString", features.trail.geometry.coordinates)),
    field: "features.2.geometry.type",
  },
  {
    code: "map-ring",
    what: "a ring that is not closed",
    files: withMap(
      ofKind("lake", "Polygon", [
        [
          [168.65, -45.04],
          [168.68, -45.04],
          [168.68, -45.02],
          [168.65, -45.03],
        ],
      ]),
    ),
    field: "features.2.geometry.coordinates.0",
  },
  {
    code: "value-choice",
    what: "a kind of feature that is none",
    files: withMap(ofKind("wallo", "Point", [168.65, -45.04])),
    field: "features.2.properties.kind",
    fix: 'write "kind": "wallow"',
  },
  {
    code: "value-range",
    what: "a map with latitude first in the south",
    files: withMap(ofKind("gate", "Point", [-45.04, 168.65])),
    fix: "longitude comes first: write [168.65, -45.04]",
  },
  {
    code: "map-swapped",
    what: "a map with latitude first where both fit",
    files: {
      ...withArea({
        centre: { lat: 41.4, lon: -77.8 },
        timezone: "America/New_York",
        camps: [],
        parkings: [],
        blocks: [],
      }),
      ...withMap(ofKind("gate", "Point", [41.41, -77.81])),
    },
    field: "features.2.geometry.coordinates",
    fix: "write [-77.81, 41.41], and the others of this feature likewise",
  },
  {
    code: "number-taken",
    what: "two sites with number 3",
    files: { [SITE_2]: { ...second, number: 3 } },
    file: SITE_2,
    field: "number",
  },
  {
    code: "photo-alt",
    what: "a photo without words",
    files: { ...withProse("![](photos/a.jpg)"), [`${AREA}/photos/a.jpg`]: "x" },
  },
  {
    code: "photo-kind",
    what: "a photo that is a program",
    files: { ...withProse("![a](photos/a.svg)"), [`${AREA}/photos/a.svg`]: "x" },
  },
  {
    code: "photo-missing",
    what: "a photo that is not there",
    files: withSite({ photos: [{ file: "photos/bench.jpg", alt: "a", credit: "c" }] }),
    field: "photos.0.file",
  },
  {
    code: "photo-path",
    what: "a photo up the tree of folders",
    files: withSite({ photos: [{ file: "../../../../etc/passwd", alt: "a", credit: "c" }] }),
  },
  {
    code: "photo-path",
    what: "an image up the tree, escaped",
    files: withProse("![a](photos/%2e%2e/%2e%2e/x.jpg)"),
  },
  {
    code: "photo-path",
    what: "a photo by its place on the disk",
    files: withSite({ photos: [{ file: "/etc/passwd", alt: "a", credit: "c" }] }),
  },
  {
    code: "photo-remote",
    what: "an image from the network",
    files: withProse("![a](http://example.org/a.jpg)"),
  },
  {
    code: "position-far",
    what: "a camp in another country",
    files: withArea({ camps: [{ ...area.camps[0], position: { lat: 47, lon: 11 } }] }),
    field: "camps.0.position",
  },
  {
    code: "position-swapped",
    what: "a site with lat and lon exchanged where both fit",
    files: {
      ...withArea({
        centre: { lat: 41.4, lon: -77.8 },
        timezone: "America/New_York",
        camps: [],
        parkings: [],
        blocks: [],
      }),
      ...withSite({ position: { lat: -77.81, lon: 41.41 } }),
    },
    field: "position",
    fix: 'lat and lon look exchanged: write { "lat": 41.41, "lon": -77.81 }',
  },
  {
    code: "position-swapped",
    what: "a centre exchanged against its zone",
    files: withArea({ centre: { lat: -77.8, lon: 41.4 }, timezone: "America/New_York" }),
    field: "centre",
  },
  {
    code: "placeholder-position",
    what: "a site still at the centre",
    files: withSite({ position: area.centre, grid: undefined }),
    field: "position",
    warning: true,
  },
  {
    code: "sit-twice",
    what: "one hunter on two sites",
    files: {
      ...withTrip({ sits: [trip.sits[0], { ...trip.sits[0], site: "second", walkIn: undefined }] }),
      [SITE_2]: second,
    },
    field: "sits.1",
  },
  {
    code: "terrain-twice",
    what: "two elevation files",
    files: { [`${AREA}/terrain.tif`]: "x", [`${AREA}/S46E168.hgt`]: "x" },
  },
  // clocks in New Zealand go back on 4 April 2027 at 03:00 and forward on 26 September 2027 at 02:00 (Time Act order 2007)
  {
    code: "time-repeated",
    what: "a forecast hour that comes twice",
    files: forecastRows("2027-04-04,02:30,NW,6,12,0.1,9"),
    field: "line 2, hour",
  },
  {
    code: "time-gap",
    what: "a forecast hour that does not exist",
    files: forecastRows("2027-09-26,02:00,NW,6,12,0.1,9"),
    field: "line 2, hour",
  },
  {
    code: "time-repeated",
    what: "a session that starts in the repeated hour of a trip day",
    files: withArea({
      sessions: [{ id: "morning", from: { anchor: "clock", at: "02:15" }, to: { anchor: "solarNoon" } }],
    }),
    field: "sessions.0.from.at",
  },
  {
    code: "time-repeated",
    what: "a local note in the repeated hour",
    files: withSite({
      localNotes: [{ session: "morning", turnsAt: "02:00", note: "n", seenBy: "o", seenOn: "2027-03-01" }],
    }),
    field: "localNotes.0.turnsAt",
  },
  {
    code: "time-repeated",
    what: "a rule by the clock in the repeated hour",
    files: withArea({
      shootingLight: {
        law: [{ ...rule, windows: [{ start: { anchor: "clock", at: "02:30" }, end: { anchor: "sunset" } }] }],
      },
    }),
    field: "shootingLight.law.0.windows.0.start.at",
  },
  {
    code: "timezone-far",
    what: "a zone on the other side",
    files: withArea({ timezone: "Europe/Berlin" }),
    field: "timezone",
    warning: true,
  },
  {
    code: "timezone-unknown",
    what: "a zone that is misspelt",
    files: withArea({ timezone: "Pacific/Aukland" }),
    field: "timezone",
    fix: 'write "Pacific/Auckland"',
  },
  {
    code: "timezone-unknown",
    what: "an offset instead of a zone",
    files: withArea({ timezone: "+13:00" }),
    field: "timezone",
  },
  {
    code: "walk-in-geometry",
    what: "a walk-in along a polygon",
    files: {
      ...withMap(features.boundary),
      ...withSite({ walkIns: [{ ...site.walkIns[0], along: "boundary" }] }),
    },
    field: "walkIns.0.along",
  },
  {
    code: "order-of-two",
    what: "a stand for trunks 500 to 200 mm",
    files: {
      "data/stands.json": [
        {
          id: "stand-a",
          name: "s",
          trunkMinMm: 500,
          trunkMaxMm: 200,
          ratedLoadKg: null,
          weightKg: null,
          maxPlatformHeightM: null,
        },
      ],
    },
    file: "data/stands.json",
  },
  {
    code: "value-range",
    what: "a constant out of its range",
    files: {
      "data/model.json": [
        { id: "lagMin", value: 40, unit: "min", low: 10, high: 30, reason: "r", status: "choice" },
      ],
    },
    field: "0.value",
  },
];

const seen = new Set<string>();

describe("one wrong thing", () => {
  test.each(cases)("$what is told as $code", async ({ code, files, file, field, fix, warning }) => {
    const { problems } = await readChanged(files);
    const found = problems.find(
      (problem) =>
        problem.code === code &&
        (file === undefined || problem.file === file) &&
        (field === undefined || problem.field === field),
    );
    expect(found, told(problems)).toBeDefined();
    if (fix !== undefined) expect(found?.fix).toBe(fix);
    expect(found?.severity).toBe(warning ? "warning" : undefined);
    for (const problem of problems) {
      for (const part of [problem.found, problem.expected, problem.fix])
        expect(part.length).toBeGreaterThan(0);
      expect(problem.code in PROBLEM_CODES).toBe(true);
      seen.add(problem.code);
    }
  });

  test("a link on the disk that leads out of the content is not followed", async () => {
    await inFolder(
      { ...wholeContent, "secret/area.json": area, "secret/secret.md": "secret" },
      async (folder) => {
        await symlink(join(folder, "secret"), join(folder, "content/areas/stolen"));
        await symlink(join(folder, "secret/secret.md"), join(folder, AREA, "trips/april.md"));
        const { areas, problems } = await readContent(join(folder, "content"), join(folder, "data"));
        expect(problems.map(({ code }) => code)).toEqual(["symlink-outside", "symlink-outside"]);
        expect(areas.map(({ id }) => id)).toEqual(["larch-valley"]);
        expect(areas[0]?.trips[0]?.prose).toBeNull();
        seen.add("symlink-outside");
      },
    );
  });

  test("a link on the disk that stays inside is followed, and so is a link to the whole folder", async () => {
    await inFolder(wholeContent, async (folder) => {
      await rename(join(folder, AREA, "area.md"), join(folder, AREA, "trips/april.md"));
      await symlink(join(folder, AREA, "trips/april.md"), join(folder, AREA, "area.md"));
      await symlink(join(folder, "content"), join(folder, "linked"));
      const { areas, problems } = await readContent(join(folder, "linked"), join(folder, "data"));
      expect(areas[0]?.prose?.sections).toHaveLength(2);
      expect(told(problems)).toBe("");
    });
  });

  test("a link to itself and a folder in the place of a file can not be read, and stop nothing", async () => {
    await inFolder({ ...wholeContent, [SITE]: null }, async (folder) => {
      await symlink("loop.json", join(folder, AREA, "sites/loop.json"));
      await mkdir(join(folder, SITE));
      await mkdir(join(folder, "data/broken"));
      await rename(join(folder, "data/wording.json"), join(folder, "data/broken/wording.json"));
      await mkdir(join(folder, "data/wording.json"));
      const { problems } = await readContent(join(folder, "content"), join(folder, "data"));
      const codes = problems.map(({ code }) => code);
      expect(codes.filter((code) => code === "file-unreadable")).toHaveLength(2);
      seen.add("file-unreadable");
    });
  });

  test("an area that does not exist is told with the nearest name", async () => {
    const { areas, problems } = await readChanged({}, { areas: ["larch-valey"] });
    expect(areas).toEqual([]);
    expect(problems).toMatchObject([{ code: "area-unknown", fix: "write --area larch-valley" }]);
    seen.add("area-unknown");
  });

  test("every code of the list has arisen in a case above", () => {
    expect(Object.keys(PROBLEM_CODES).filter((code) => !seen.has(code))).toEqual([]);
  });
});

describe("all files in one run", () => {
  const broken: Files = {
    ...withArea({
      timezone: "Pacific/Aukland",
      camps: [{ id: "Hut", name: "Hut", position: { lat: 168, lon: -45 } }],
    }),
    [MAP]: "{",
    ...withSite({ platformHeightM: "5 m", block: "west", cover: null }),
    [SITE_2]: "",
    ...withTrip({ from: "2027-02-30", base: "road-edn", hunters: [{ ...hunter, standId: "x" }] }),
    [FORECAST]: "localDate,hour\n",
    [CAMERA_CSV]: "at,species,count\nx,deer,1\ny,deer,0\n",
    "data/stands.json": "[",
    "content/areas/second-area/area.json": { name: "" },
  };

  test("tells every problem of every file, also between files, in a stable order", async () => {
    const first = await readChanged(broken);
    const again = await readChanged(broken);
    expect(again.problems).toEqual(first.problems);
    const places = first.problems.map(
      ({ file, field, code }) => `${file.replace(`${AREA}/`, "")}: ${field} [${code}]`,
    );
    expect(places).toEqual([
      "area.json: camps.0.id [value-form]",
      "area.json: camps.0.position.lat [value-range]",
      "area.json: timezone [timezone-unknown]",
      "cameras/bench-camera.csv: line 2, at [csv-value]",
      "cameras/bench-camera.csv: line 3, at [csv-value]",
      "cameras/bench-camera.csv: line 3, count [csv-value]",
      "map.geojson: line 1 [json-broken]",
      "sites/larch-bench.json: platformHeightM [value-type]",
      "sites/larch-bench.json: cover [value-choice]",
      "sites/larch-bench.json: block [id-unknown]",
      "sites/larch-bench.json: walkIns.0.from [id-unknown]",
      "sites/second.json:  [file-empty]",
      ...["windFrom", "windSpeed", "gust", "cloudShare", "temp"].map(
        () => "trips/april.forecast.csv: line 1 [csv-columns]",
      ),
      "trips/april.json: from [value-form]",
      "trips/april.json: base [id-unknown]",
      "content/areas/second-area/area.json: name [value-range]",
      "content/areas/second-area/area.json: summary [value-missing]",
      "content/areas/second-area/area.json: centre [value-missing]",
      "content/areas/second-area/area.json: timezone [value-missing]",
      "content/areas/second-area/area.json: elevationM [elevation-needed]",
      "data/stands.json: line 1 [json-broken]",
    ]);
  });

  test("an as-of date given to the command wins over that of the area", async () => {
    const { problems } = await readChanged({}, { asOf: "2026-12-01T00:00:00Z" });
    expect(problems).toMatchObject([{ code: "later-than-as-of", field: "season.0.checkedOn" }]);
  });
});

test("an open ring with a broken position is told once, by its position", async () => {
  const ring = [
    [168.65, []],
    [168.68, -45.04],
    [168.68, -45.02],
    [168.65, -45.04],
  ];
  const { problems } = await readChanged(withMap(ofKind("lake", "Polygon", [ring])));
  expect(problems.map(({ code }) => code)).toEqual(["value-type"]);
});

describe("text that looks like a program", () => {
  const script = '<script>alert("{{ 1 }}")</script>';

  test("is no problem in any field of text, and prose shows it as text", async () => {
    const { areas, problems } = await readChanged({
      ...withArea({
        name: script,
        summary: script,
        hazards: [{ name: script, where: script, advice: script }],
      }),
      ...withSite({ name: script, privateNotes: script }),
      ...withTrip({ name: script, notes: script, checkIn: script }),
      ...withProse(`# ${script}\n\n${script}\n`),
    });
    expect(told(problems)).toBe("");
    expect(areas[0]?.facts.name).toBe(script);
    const [section] = areas[0]!.prose!.sections;
    expect(section?.heading).toBe(script);
    expect(section?.html).toBe("<p>&lt;script&gt;alert(&quot;{{ 1 }}&quot;)&lt;/script&gt;</p>");
  });
});
