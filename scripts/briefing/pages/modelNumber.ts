import type { ModelRow } from "../../content/schema/sharedDataSchema.ts";

/**
 * A constant of the model that is one number.
 *
 * @throws {RangeError} when there is none of that name, or it is not one number
 */
export function modelNumber(model: readonly ModelRow[], id: string): number {
  const value = model.find((row) => row.id === id)?.value;
  if (typeof value !== "number") throw new RangeError(`the model has no number named ${id}`);
  return value;
}
