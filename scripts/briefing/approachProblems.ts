import type { AreaContent } from "../content/areaContent.ts";
import type { Problem } from "../content/problem.ts";
import { approachOf } from "./approachSector.ts";
import { mapShapes, shapeById } from "./mapShapes.ts";

/**
 * Approaches that give no sector: their map feature lies nowhere within their distances and no bearings are typed. Left out in
 * silence, such a way of the deer would make a site look better than it is.
 */
export function approachProblems(area: AreaContent, fileOf: (path: string) => string): Problem[] {
  const shapes = mapShapes(area.map);
  return area.sites.flatMap((site) =>
    Object.entries(site.facts.approaches).flatMap(([session, approaches]) =>
      approaches.flatMap((approach, at): Problem[] => {
        const shape = approach.along === undefined ? null : shapeById(shapes, approach.along);
        if (approachOf(approach, site.facts.position, shape) !== null) return [];
        const [nearest, farthest] = approach.distanceM;
        return [
          {
            code: "approach-away",
            file: fileOf(`sites/${site.id}.json`),
            field: `approaches.${session}[${at}].along`,
            found: `"${approach.along ?? ""}", of which no part lies ${nearest} to ${farthest} m from the site`,
            expected: "a map feature within distanceM of the site, or bearingsDeg",
            fix: "mend along or distanceM, or write bearingsDeg: [from, to] in degrees, clockwise",
          },
        ];
      }),
    ),
  );
}
