import type { Stand } from "../content/schema/sharedDataSchema.ts";
import type { TripFile } from "../content/schema/tripSchema.ts";
import type { Check } from "./check.ts";
import { loadCheck } from "./loadCheck.ts";
import { orderChecks } from "./orderChecks.ts";
import type { SafetyLimits } from "./safetyLimits.ts";
import { standAge, wornDates } from "./wornDates.ts";

/**
 * The checks of one hunter on one day: load on the own stand (C6), harness (C7) and the stand's age (C7, subject the
 * stand). Load and age without a known stand are NOT CHECKED.
 */
export function hunterChecks(
  facts: { hunter: TripFile["hunters"][number]; stand: Stand | null; onDate: string },
  limits: SafetyLimits,
): Check[] {
  const { hunter, stand, onDate } = facts;
  const load = {
    subject: hunter.id,
    loadKg: hunter.loadKg,
    guessed: hunter.guessed,
    ratedLoadKg: stand?.ratedLoadKg ?? null,
  };
  return orderChecks([
    loadCheck(load, limits),
    wornDates({ subject: hunter.id, item: hunter.harness, onDate }),
    standAge({
      subject: stand?.id ?? hunter.standId ?? hunter.id,
      replaceBy: stand?.replaceBy ?? null,
      onDate,
    }),
  ]);
}
