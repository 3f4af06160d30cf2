/** Longest trip, days: a pack prints sheets for each day of a trip. */
export const MOST_TRIP_DAYS = 31;

/** Sessions of an area that does not define its own. */
export const DEFAULT_SESSION_IDS = ["morning", "evening"] as const;
