import type { Position } from "../../geo/position.ts";
import type { AreaDraft } from "../areaDraft.ts";
import type { Problem } from "../problem.ts";
import { checkDistances } from "./checkDistances.ts";
import { checkGrid } from "./checkGrid.ts";
import { checkZone } from "./checkZone.ts";
import { wholePosition } from "./wholePosition.ts";

/** Where the area and its sites lie: zone, height, distances, grid references, positions left from a new file. */
export function checkPlace(draft: AreaDraft): Problem[] {
  return [
    ...checkZone(draft),
    ...checkElevation(draft),
    ...checkDistances(draft),
    ...checkNewCentre(draft),
    ...draft.sites.flatMap((site) => {
      const position = wholePosition(site.loose?.position);
      return [
        ...checkGrid(site.file, site.loose?.grid, position),
        ...checkPlaceholder(draft, site.file, position),
      ];
    }),
  ];
}

function checkElevation(draft: AreaDraft): Problem[] {
  const { file, loose } = draft.area;
  if (draft.terrainPath !== null || loose === null || loose.elevationM !== undefined) return [];
  return [
    {
      code: "elevation-needed",
      file,
      field: "elevationM",
      found: "neither an elevation file nor elevationM",
      expected: "a number, -430 to 8850, metres above sea level",
      fix: 'add "elevationM": and the height of the area, or a terrain file',
    },
  ];
}

function checkPlaceholder(draft: AreaDraft, file: string, position: Position | null): Problem[] {
  const centre = wholePosition(draft.area.loose?.centre);
  if (!centre || !position || centre.lat !== position.lat || centre.lon !== position.lon) return [];
  return [placeholder(file, "position", position, "write the position of the tree")];
}

function checkNewCentre(draft: AreaDraft): Problem[] {
  const centre = wholePosition(draft.area.loose?.centre);
  if (centre?.lat !== 0 || centre.lon !== 0) return [];
  return [placeholder(draft.area.file, "centre", centre, "write the centre and the time zone of the area")];
}

function placeholder(file: string, field: string, { lat, lon }: Position, fix: string): Problem {
  return {
    severity: "warning",
    code: "placeholder-position",
    file,
    field,
    found: `${lat}, ${lon}, as in a new file`,
    expected: "the real position, decimal degrees, WGS 84",
    fix,
  };
}
