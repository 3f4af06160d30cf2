import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { simplifyLine } from "../../scripts/terrain/simplifyLine.ts";

const line = (...points: number[]): Float64Array => Float64Array.from(points);

function distanceToLine(x: number, y: number, points: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let at = 2; at < points.length; at += 2) {
    const [x0, y0] = [points[at - 2]!, points[at - 1]!];
    const [dx, dy] = [points[at]! - x0, points[at + 1]! - y0];
    const along = Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(x - x0 - along * dx, y - y0 - along * dy));
  }
  return least;
}

describe("fewer points", () => {
  test("points on a straight stretch go, the corner stays", () => {
    expect(simplifyLine(line(0, 0, 1, 0, 2, 0, 2, 1, 2, 2), 0)).toEqual(line(0, 0, 2, 0, 2, 2));
  });

  test("a bump stays or goes by its height", () => {
    expect(simplifyLine(line(0, 0, 5, 1, 10, 0), 0.9)).toEqual(line(0, 0, 5, 1, 10, 0));
    expect(simplifyLine(line(0, 0, 5, 1, 10, 0), 1)).toEqual(line(0, 0, 10, 0));
  });

  test("a ring stays a ring with an inside, whatever the tolerance", () => {
    const ring = line(0, 0, 4, 0, 4, 3, 0, 3, 0, 0);
    const drawn = simplifyLine(ring, 100);
    expect(drawn.length / 2).toBe(4);
    expect([drawn[0], drawn[1]]).toEqual([drawn.at(-2), drawn.at(-1)]);
    expect(simplifyLine(ring, 0.1)).toEqual(ring);
  });

  test("no point of the old line lies farther from the new one than the tolerance", () => {
    const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 60 }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (pairs, tolerance) => {
          const points = Float64Array.from(pairs.flat());
          const drawn = simplifyLine(points, tolerance);
          expect([drawn[0], drawn[1]]).toEqual(pairs[0]);
          expect([drawn.at(-2), drawn.at(-1)]).toEqual(pairs.at(-1));
          for (const [x, y] of pairs) {
            expect(distanceToLine(x, y, drawn)).toBeLessThanOrEqual(tolerance + 1e-9);
          }
        },
      ),
      { seed: 1973, numRuns: 300 },
    );
  });

  test("a line of 100 000 points needs no deep stack", () => {
    const points = new Float64Array(200000);
    for (let at = 0; at < 100000; at++) {
      points[2 * at] = at;
      points[2 * at + 1] = Math.sin(at / 50) * 20;
    }
    const drawn = simplifyLine(points, 0.5);
    expect(drawn.length).toBeLessThan(points.length / 5);
  });

  test("a tolerance under 0 is refused", () => {
    expect(() => simplifyLine(line(0, 0, 1, 1), -1)).toThrow(RangeError);
  });
});
