import type { AreaFile } from "../content/schema/areaSchema.ts";
import type { SiteFile } from "../content/schema/siteSchema.ts";
import { type Check, combined, listed } from "./check.ts";

/**
 * C22: a stand left on a site against the dates and the label that the land's rules ask for. Outside the dates, or
 * without a label that is required, is a STOP; any date not entered NOT CHECKED.
 *
 * @param facts.standRules   null = no rules entered
 */
export function standDates(facts: {
  subject: string;
  stand: Omit<NonNullable<SiteFile["stand"]>, "standId">;
  standRules: Pick<NonNullable<AreaFile["standRules"]>, "from" | "removeBy" | "labelRequired"> | null;
  onDate: string;
}): Check {
  const { subject, stand, standRules, onDate } = facts;
  const from = standRules?.from ?? null;
  const removeBy = standRules?.removeBy ?? null;
  const labelRequired = standRules?.labelRequired ?? null;
  const faults = [
    from !== null && onDate < from ? `not allowed before ${from}` : "",
    from !== null && stand.placedOn !== null && stand.placedOn < from
      ? `placed ${stand.placedOn}, before ${from}`
      : "",
    ...[removeBy, stand.removeBy].map((by) => (by !== null && onDate > by ? `was to be gone by ${by}` : "")),
    labelRequired === true && stand.labelled === false ? "has no label" : "",
  ].filter(Boolean);
  const missing = [
    from === null ? "allowed from" : "",
    removeBy === null ? "remove-by rule" : "",
    labelRequired === null ? "label rule" : "",
    stand.placedOn === null ? "placed on" : "",
    stand.removeBy === null ? "remove by" : "",
    stand.labelled === null ? "label" : "",
  ].filter(Boolean);
  const result = combined([faults.length > 0 ? "STOP" : "OK", missing.length > 0 ? "NOT CHECKED" : "OK"]);
  const text =
    faults[0] !== undefined
      ? `Stand ${faults[0]}.`
      : missing.length > 0
        ? `Stand dates not checked: ${listed(missing)} not entered.`
        : `Stand allowed since ${from}, to be gone by ${earliest(removeBy, stand.removeBy)}.`;
  return {
    id: "C22",
    result,
    text,
    subject,
    inputs: {
      placedOn: stand.placedOn,
      removeBy: stand.removeBy,
      labelled: stand.labelled,
      allowedFrom: from,
      allowedUntil: removeBy,
      labelRequired,
      onDate,
    },
  };
}

function earliest(a: string | null, b: string | null): string {
  return [a, b].filter((date) => date !== null).sort()[0] ?? "";
}
