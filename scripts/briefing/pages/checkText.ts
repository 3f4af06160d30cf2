import type { PackCheck } from "../../content/schema/packSchema.ts";
import { dateText, monthName } from "../words/dateText.ts";
import { platformFinelyText, rangeText, trunkText, weightText, windSpeedText } from "../words/measureText.ts";
import { tempText } from "../words/tempText.ts";
import type { AreaPack } from "./sheetParts.ts";

/** A figure of a sentence with its unit, how inputs in that unit round to it, and how it is shown in US units. */
interface Measure {
  pattern: RegExp;
  /** the input as the sentence writes it; null when it is of another kind */
  written(name: string, value: number): string | null;
  shown(exact: number): string;
  fromFigure(figure: number): number;
}

const MPS_PER_KMH = 1 / 3.6;
/** Up to here a length is a height next to its limit; beyond it is a distance over the ground. */
const HIGHEST_SEAT_M = 15;

const US: readonly Measure[] = [
  measure(/(-?[\d.]+) mm\b/g, /Mm$/, 0, 1, (mm) => trunkText(mm, "us")),
  measure(/(-?[\d.]+) km\/h/g, /Mps$/, 0, MPS_PER_KMH, (mps) => windSpeedText(mps, "us")),
  measure(/(-?[\d.]+) kg\b/g, /Kg$|^(?:body|clothing|harness|pack|weapon|water)$/, 1, 1, (kg) =>
    weightText(kg, "us"),
  ),
  measure(/(-?[\d.]+) °C/g, /C$/, 0, 1, (tempC) => tempText(tempC, "us")),
  measure(/(-?[\d.]+) m\b/g, /M$/, 1, 1, (m) =>
    m < HIGHEST_SEAT_M ? platformFinelyText(m, "us") : rangeText(m, "us"),
  ),
];

/**
 * The sentence of a check in the units and dates of its area. Sentences are made metric; in an area with US units each
 * figure is worked out anew from the input that it was rounded from, so that it agrees with the rest of the page.
 */
export function checkText({ text, inputs }: Pick<PackCheck, "text" | "inputs">, area: AreaPack): string {
  const { units, locale } = area.pack.area;
  return localDates(units === "us" ? usUnits(text, inputs) : text, locale);
}

function usUnits(text: string, inputs: PackCheck["inputs"]): string {
  const numbers = Object.entries(inputs).flatMap(([name, value]) =>
    typeof value === "number" ? [{ name, value }] : [],
  );
  return US.reduce(
    (sentence, { pattern, written, shown, fromFigure }) =>
      sentence.replace(pattern, (_whole, figure: string) => {
        const from = numbers.find(({ name, value }) => written(name, value) === figure);
        return shown(from?.value ?? fromFigure(Number(figure)));
      }),
    withUnits(text),
  );
}

/** Gives every figure its own unit: "about 288 to 327 mm", "Mean 10 km/h, gusts 18", "feels like 3". */
function withUnits(text: string): string {
  return text
    .replace(/([\d.]+) to ([\d.]+) mm\b/g, "$1 mm to $2 mm")
    .replace(/gusts (\d+)(?! km\/h)\b/g, "gusts $1 km/h")
    .replace(/feels like (-?\d+)(?! °C)\b/g, "feels like $1 °C");
}

/** "2027-10-03" and "2028-02" as the area writes dates. */
function localDates(text: string, locale: string): string {
  return text
    .replace(/\b\d{4}-\d\d-\d\d\b/g, (date) => dateText(date, locale))
    .replace(
      /\b(\d{4})-(0[1-9]|1[0-2])\b/g,
      (_whole, year: string, month: string) => `${monthName(Number(month)).slice(0, 3)} ${year}`,
    );
}

function measure(
  pattern: RegExp,
  names: RegExp,
  places: number,
  perFigure: number,
  shown: (value: number) => string,
): Measure {
  return {
    pattern,
    written: (name, value) =>
      names.test(name) ? String(Number((value / perFigure).toFixed(places)) + 0) : null,
    shown,
    fromFigure: (figure) => figure * perFigure,
  };
}
