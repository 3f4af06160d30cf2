import type { Position } from "../geo/position.ts";
import { type PlanePoint, seatPlane } from "../shooting/seatPlane.ts";
import type { MapShape } from "./mapShapes.ts";

/** Whether a drawn no-fire strip crosses the straight line between two places. */
export function stripBetween(shapes: readonly MapShape[], a: Position, b: Position): boolean {
  const toPlane = seatPlane(a);
  const end = toPlane(b);
  return shapes
    .filter(({ kind }) => kind === "no-fire-strip")
    .some(({ lines }) =>
      lines.some((line) =>
        line.some((from, at) => {
          const to = line[at + 1];
          return to !== undefined && crosses(end, toPlane(from), toPlane(to));
        }),
      ),
    );
}

/** Whether the legs from the seat to a place and between two others cross. */
function crosses(end: PlanePoint, from: PlanePoint, to: PlanePoint): boolean {
  const side = (a: PlanePoint, b: PlanePoint, c: PlanePoint): number =>
    (b.eastM - a.eastM) * (c.northM - a.northM) - (b.northM - a.northM) * (c.eastM - a.eastM);
  const seat = { eastM: 0, northM: 0 };
  return side(seat, end, from) * side(seat, end, to) < 0 && side(from, to, seat) * side(from, to, end) < 0;
}
