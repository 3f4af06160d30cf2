import { z } from "zod";
import { text } from "./primitives.ts";

export const photo = z.strictObject({
  file: text('path of the photo from the folder of the area, such as "photos/bench.jpg"'),
  alt: text("what the photo shows, for a reader who can not see it"),
  credit: text("who took it"),
});

export type Photo = z.infer<typeof photo>;
