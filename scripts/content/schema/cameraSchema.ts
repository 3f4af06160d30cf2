import { z } from "zod";
import { id, integerBetween, position, schemaLink, text } from "./primitives.ts";

/** cameras/<camera>.json: where a trail camera hangs and how far its clock is off. */
export const cameraFile = z.strictObject({
  ...schemaLink,
  name: text("name of the camera"),
  position,
  site: id.optional(),
  approach: id.optional(),
  timezone: text("IANA zone the camera's clock was set to").optional(),
  clockOffsetMin: integerBetween(-1440 * 400, 1440 * 400, "minutes to add to the camera's clock").default(0),
  notes: text("notes").optional(),
});

export type CameraFile = z.infer<typeof cameraFile>;
