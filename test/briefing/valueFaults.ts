/**
 * Faults in the single values of a pack, told as "path: what is wrong": numbers, bearings, positions, shares, texts, instants and
 * nulls, each by the rule that the ending of its key names.
 */
export function valueFaults(value: unknown, timezone: string, nulls: "with why" | "free"): string[] {
  const faults: string[] = [];
  walk(value, "", "", faults, { offsetOf: offsetReader(timezone), needsWhy: nulls === "with why" });
  return faults;
}

interface Rules {
  offsetOf: (at: Date) => string;
  needsWhy: boolean;
}

const BEARINGS = new Set([
  ...["aspectDeg", "localAspectDeg", "driftToDeg", "windFromDeg", "bearingDeg", "fromDeg", "toDeg"],
  ...["fromMagDeg", "toMagDeg", "blindFromDeg", "blindToDeg"],
]);
const SHARES = new Set(["illuminated", "share", "low", "high"]);
/** What a check was judged on: its text says what is not known. */
const HAS_TEXT_FOR_NULLS = /\.inputs$/;

function walk(value: unknown, key: string, path: string, faults: string[], rules: Rules): void {
  if (typeof value === "number") faults.push(...numberFaults(value, key).map((fault) => `${path}: ${fault}`));
  else if (typeof value === "string") faults.push(...textFaults(value, rules).map((f) => `${path}: ${f}`));
  else if (Array.isArray(value)) {
    value.forEach((part, i) => {
      walk(part, key, `${path}[${i}]`, faults, rules);
    });
  } else if (typeof value === "object" && value !== null) {
    if (rules.needsWhy && !HAS_TEXT_FOR_NULLS.test(path)) faults.push(...nullFaults(value, path));
    for (const [name, part] of Object.entries(value)) {
      walk(part, name, path === "" ? name : `${path}.${name}`, faults, rules);
    }
  } else if (value === undefined) faults.push(`${path}: undefined`);
}

/** Every null is named in the `why` of its object; `why` names nothing else, but what lies in a part without its own. */
function nullFaults(object: object, path: string): string[] {
  const entries = Object.entries(object);
  const empty = entries.filter(([, part]) => part === null).map(([name]) => name);
  const why = (object as { why?: Record<string, unknown> }).why;
  if (why === undefined)
    return empty.map((name) => `${path}.${name}: null in an object that has no why at all`);
  const missing = empty.filter((name) => typeof why[name] !== "string");
  const idle = Object.keys(why).filter((name) => name in object && !empty.includes(name));
  const strange = Object.keys(why).filter((name) => !(name in object));
  return [
    ...missing.map((name) => `${path}.${name}: null without a why`),
    ...idle.map((name) => `${path}.why.${name}: the value is known`),
    ...strange.map((name) => `${path}.why.${name}: no such key beside it`),
  ];
}

function numberFaults(value: number, key: string): string[] {
  if (!Number.isFinite(value)) return [`${value} is no number`];
  if (Object.is(value, -0)) return ["minus zero"];
  if (SHARES.has(key) || key.endsWith("Share")) {
    return [...within(value, 0, 1), ...decimals(value, 4)];
  }
  if (key === "lat") return [...within(value, -90, 90), ...decimals(value, 6)];
  if (key === "lon") return [...within(value, -180, 180), ...decimals(value, 6)];
  if (BEARINGS.has(key) && !(value >= 0 && value < 360)) return [`${value} is no bearing, 0 to under 360`];
  if (key.endsWith("Deg") || key === "horizon") return decimals(value, 3);
  if (key.endsWith("Mps")) return decimals(value, 2);
  if (key.endsWith("M") || key === "dayLengthMin") return decimals(value, 1);
  return [];
}

function within(value: number, low: number, high: number): string[] {
  return value >= low && value <= high ? [] : [`${value} lies outside ${low} to ${high}`];
}

function decimals(value: number, most: number): string[] {
  return Number(value.toFixed(most)) === value ? [] : [`${value} has more than ${most} decimals`];
}

function textFaults(text: string, { offsetOf }: Rules): string[] {
  if (text.trim() === "") return ["an empty text"];
  if (/\b(NaN|undefined|Infinity|null|\[object)\b/.test(text)) return [`"${text}" shows a missing value`];
  if (!/^\d{4}-\d\d-\d\dT/.test(text)) return [];
  if (!/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$/.test(text)) return [`${text} is no whole second`];
  const offset = offsetOf(new Date(text));
  return text.endsWith(offset) ? [] : [`${text} does not have the offset in force, ${offset}`];
}

/** The offset of a zone at an instant, by the engine's own calendar. */
function offsetReader(timezone: string): (at: Date) => string {
  const format = new Intl.DateTimeFormat("en-US", { timeZone: timezone, timeZoneName: "longOffset" });
  const known = new Map<number, string>();
  return (at) => {
    const quarter = Math.floor(at.getTime() / 900_000);
    let offset = known.get(quarter);
    if (offset === undefined) {
      const name = format.formatToParts(at).find((part) => part.type === "timeZoneName")?.value ?? "";
      offset = name === "GMT" ? "+00:00" : name.replace("GMT", "");
      known.set(quarter, offset);
    }
    return offset;
  };
}
