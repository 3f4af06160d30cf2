/** A command was called in a way it does not know; commands print the message and end with status 2. */
export class UsageError extends Error {
  override name = "UsageError";
}
