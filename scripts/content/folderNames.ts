import { nearestWord } from "./nearestWord.ts";
import type { Problem } from "./problem.ts";
import { ID_PATTERN } from "./schema/primitives.ts";
import { slug } from "./slug.ts";

const TERRAIN_NAME = /^(terrain\.(tiff?|asc)|[NS]\d{2}[EW]\d{3}\.hgt)$/i;
const TERRAIN_SIDECAR =
  /^(terrain\.(prj|tfw|aux\.xml)|terrain\.tiff?\.aux\.xml|[NS]\d{2}[EW]\d{3}\.hgt\.aux\.xml)$/i;

export const AREA_FILES = ["area.json", "area.md", "map.geojson", "roster.json", "sits.csv"] as const;
export const AREA_FOLDERS = ["sites", "trips", "cameras", "wind", "photos"] as const;

/** Whether a file name is that of an elevation file. */
export function isTerrainName(name: string): boolean {
  return TERRAIN_NAME.test(name);
}

/** Whether a file in the folder of an area is one that a pack may use. */
export function isKnownInArea(name: string, isFolder: boolean): boolean {
  if (isFolder) return AREA_FOLDERS.some((known) => known === name);
  return AREA_FILES.some((known) => known === name) || TERRAIN_NAME.test(name) || TERRAIN_SIDECAR.test(name);
}

/** A file or folder that no part of a pack reads: said, so that a misspelt name is not lost in silence. */
export function notPartWarning(shown: string, name: string, known: readonly string[]): Problem {
  const near = nearestWord(name, known);
  return {
    severity: "warning",
    code: "file-not-part",
    file: shown,
    field: "",
    found: JSON.stringify(name),
    expected: known.length > 0 ? known.join(", ") : "files of a pack",
    fix: near ? `not part of a pack; did you mean ${near}?` : "not part of a pack; it is left out",
  };
}

/** The problem of a name that is no id, or null. */
export function idNameProblem(shown: string, id: string): Problem | null {
  if (ID_PATTERN.test(id) && id.length <= 40) return null;
  const meant = slug(id);
  return {
    code: "file-name",
    file: shown,
    field: "",
    found: JSON.stringify(id),
    expected: "small letters a to z, digits and single hyphens, at most 40 characters",
    fix: meant ? `rename it to ${meant}` : "give it a name of such letters",
  };
}
