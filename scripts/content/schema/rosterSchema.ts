import { z } from "zod";
import { id, integerBetween, localDate, schemaLink, text } from "./primitives.ts";

/** roster.json: which party has which block, when. */
export const rosterFile = z.strictObject({
  ...schemaLink,
  buffer: integerBetween(0, 30, "days between two parties on one block"),
  rows: z.array(
    z.strictObject({
      block: id,
      from: localDate,
      to: localDate,
      party: text("name of the party"),
      roadEnd: id.optional(),
      vehicles: integerBetween(0, 20, "vehicles").optional(),
      contact: text("contact of the party").optional(),
    }),
  ),
});

export type RosterFile = z.infer<typeof rosterFile>;
