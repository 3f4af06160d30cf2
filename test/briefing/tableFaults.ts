import type { DetailsFile } from "../../scripts/content/schema/detailsSchema.ts";
import type { PackFile, PackSite } from "../../scripts/content/schema/packSchema.ts";
import { rangeFaults } from "./phaseFaults.ts";

const POINTS = "N NNE NE ENE E ESE SE SSE S SSW SW WSW W WNW NW NNW".split(" ");
const WINDS = [...POINTS.flatMap((point) => [`${point} light`, `${point} fresh`]), "calm calm"];
const PHASES = ["falling", "turning", "rising"];
const STEP_MS = 5 * 60_000;

interface Row {
  windFrom: string;
  class: string;
  session: string;
}

const keyOf = (row: Row): string => `${row.windFrom} ${row.class} ${row.session}`;

/** Faults in the wind table and the session table of a site: rows missing or out of order, verdicts that contradict their row. */
export function tableFaults(site: PackSite, sessions: readonly string[]): string[] {
  const cells = WINDS.flatMap((wind) => sessions.map((session) => `${wind} ${session}`));
  const faults: string[] = [];
  const rows = site.windTable.map((row) => `${keyOf(row)} ${row.phase}`);
  const expected = cells.flatMap((cell) => PHASES.map((phase) => `${cell} ${phase}`));
  if (rows.join() !== expected.join()) faults.push(`${site.id} windTable: rows missing or out of order`);
  if (site.sessionTable.map(keyOf).join() !== cells.join())
    faults.push(`${site.id} sessionTable: rows missing or out of order`);
  site.windTable.forEach((row, i) => {
    const at = `${site.id} windTable ${rows[i]}`;
    if (!row.localNote && row.verdict !== row.modelVerdict) faults.push(`${at}: not the model's verdict`);
    if ((row.modelVerdict === "not assessed") !== (row.reachShare === null)) faults.push(`${at}: reachShare`);
    if (row.class === "calm" && row.modelVerdict === "suits") faults.push(`${at}: a calm never suits`);
  });
  return faults;
}

/** Faults in the sits of a site: outside their session, off the steps, outside their range, or beside a verdict that has none. */
export function sitFaults(site: PackSite, details: DetailsFile): string[] {
  const ranges = details.sites?.find((entry) => entry.id === site.id)?.sitRanges ?? [];
  if (ranges.map(keyOf).join() !== site.sessionTable.map(keyOf).join())
    return [`details ${site.id} sitRanges: not the rows of the session table`];
  return site.sessionTable.flatMap((row, i) => {
    const at = `${site.id} sessionTable ${keyOf(row)}`;
    const { sitFrom, sitUntil } = row;
    if (sitFrom === null || sitUntil === null) {
      const isHalf = sitFrom !== sitUntil ? [`${at}: one end of the sit alone`] : [];
      return row.verdict === "suits" ? [...isHalf, `${at}: suits without a sit`] : isHalf;
    }
    const session = details.sessions.find((entry) => entry.id === row.session);
    const [from, until] = [Date.parse(sitFrom), Date.parse(sitUntil)];
    const isInside = from >= Date.parse(session?.from ?? "") && until <= Date.parse(session?.to ?? "");
    const hasNone = ["avoid", "not assessed"].includes(row.verdict) && !row.localNote;
    return [
      ...(from < until ? [] : [`${at}: a sit from ${sitFrom} to ${sitUntil}`]),
      ...(isInside ? [] : [`${at}: a sit outside its session`]),
      ...(from % STEP_MS === 0 && until % STEP_MS === 0 ? [] : [`${at}: a sit on no steps of 5 minutes`]),
      ...(hasNone ? [`${at}: a sit where the verdict is ${row.verdict}`] : []),
      ...[
        ...rangeFaults(ranges[i]?.sitFromRange ?? null, sitFrom),
        ...rangeFaults(ranges[i]?.sitUntilRange ?? null, sitUntil),
      ].map((fault) => `${at}: ${fault}`),
    ];
  });
}

/**
 * Faults in the coverage: rows missing or out of order, and sites that suit in one and not in the other. A site that no row names
 * is taken to be barred from all.
 */
export function coverageFaults(pack: PackFile, sessions: readonly string[]): string[] {
  const rows = pack.coverage ?? [];
  const sites = pack.sites ?? [];
  const cells = sessions.flatMap((session) => WINDS.map((wind) => `${wind} ${session}`));
  const faults = rows.map(keyOf).join() === cells.join() ? [] : ["coverage: rows missing or out of order"];
  const counted = new Set(rows.flatMap((row) => row.suits));
  for (const row of rows) {
    const suiting = sites
      .filter((site) => counted.has(site.id))
      .filter((site) => site.sessionTable.some((r) => keyOf(r) === keyOf(row) && r.verdict === "suits"))
      .map((site) => site.id);
    if (row.suits.join() !== suiting.join())
      faults.push(`coverage ${keyOf(row)}: ${row.suits}, by the session tables ${suiting}`);
    if (row.gap !== (row.suits.length === 0)) faults.push(`coverage ${keyOf(row)}: gap`);
  }
  return faults;
}
