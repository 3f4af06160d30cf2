import { z } from "zod";
import { id, text } from "./primitives.ts";

export const MAP_KINDS = [
  "walk-in",
  "wallow",
  "trail",
  "track",
  "road",
  "gate",
  "stream",
  "lake",
  "crossing",
  "boundary",
  "block",
  "closed",
  "building",
  "hazard",
  "bedding",
  "feeding",
  "deer-trail",
  "no-fire-strip",
  "helicopter-spot",
] as const;

const coordinate = z
  .tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)])
  .describe("[lon, lat], decimal degrees, WGS 84, longitude first");

const ring = z
  .array(coordinate)
  .min(4)
  .describe("a closed ring of at least 4 positions, the last the same as the first");

export const mapGeometry = z.discriminatedUnion("type", [
  z.strictObject({ type: z.literal("Point"), coordinates: coordinate }),
  z.strictObject({ type: z.literal("LineString"), coordinates: z.array(coordinate).min(2) }),
  z.strictObject({ type: z.literal("Polygon"), coordinates: z.array(ring).min(1) }),
]);

export const mapFeature = z.strictObject({
  type: z.literal("Feature"),
  geometry: mapGeometry,
  properties: z.strictObject({
    id,
    kind: z.enum(MAP_KINDS),
    name: text("name").optional(),
    note: text("note").optional(),
    private: z.boolean().optional(),
    protects: z.enum(["always", "occupied", "no"]).optional(),
  }),
});

/** map.geojson: everything that is drawn (RFC 7946). */
export const mapFile = z.strictObject({
  $schema: z.string().optional(),
  type: z.literal("FeatureCollection"),
  features: z.array(mapFeature),
});

export type MapFeature = z.infer<typeof mapFeature>;
export type MapFile = z.infer<typeof mapFile>;
export type MapKind = (typeof MAP_KINDS)[number];
