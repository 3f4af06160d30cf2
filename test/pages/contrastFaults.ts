import type { Page } from "../browser.ts";
import { inPage } from "./inPage.ts";

export type Theme = "day" | "dim" | "red" | "print";

/** Colours of one theme by the name of their token, as #rgb, #rrggbb or rgb(). */
export type Tokens = Record<string, string>;

/** Tokens of text and of lines and marks that mean something, each against the paper. */
const TEXT = ["ink", "quiet"];
const MARKS = ["ink", "line", "night"];

/**
 * Tokens of a theme that stand out too little from the paper: text under 7 to 1 (the red theme 4.5, for pure red reaches
 * only 5.25), lines and marks under 3 to 1, and night and day of the light bar under 3 to 1 against each other.
 *
 * @source WCAG 2.2, 1.4.6 and 1.4.11; the red theme 1.4.3
 */
export function contrastFaults(theme: Theme, tokens: Tokens): string[] {
  const pairs = [
    ...TEXT.map((name) => ({ name, ground: "paper", least: theme === "red" ? 4.5 : 7 })),
    ...MARKS.map((name) => ({ name, ground: "paper", least: 3 })),
    { name: "night", ground: "day", least: 3 },
  ];
  return pairs.flatMap(({ name, ground, least }) => {
    const [front, back] = [tokens[name], tokens[ground]];
    if (front === undefined || front === "") return [`${theme}: no token --${name}`];
    if (back === undefined || back === "") return [`${theme}: no token --${ground}`];
    const ratio = contrast(front, back);
    return ratio >= least
      ? []
      : [`${theme}: --${name} on --${ground} is ${ratio.toFixed(2)}, at least ${least}`];
  });
}

/** Contrast of two colours, 1 to 21. */
export function contrast(one: string, other: string): number {
  const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/** Relative luminance of a colour, 0 to 1. @source WCAG 2.2, relative luminance */
export function luminance(colour: string): number {
  const [r, g, b] = channels(colour).map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function channels(colour: string): [number, number, number] {
  const short = /^#([\da-f])([\da-f])([\da-f])$/i.exec(colour);
  const long = /^#([\da-f]{2})([\da-f]{2})([\da-f]{2})$/i.exec(colour);
  const rgb = /^rgb\((\d+),\s*(\d+),\s*(\d+)\)$/.exec(colour);
  const found = short?.slice(1).map((c) => Number.parseInt(c + c, 16)) ??
    long?.slice(1).map((c) => Number.parseInt(c, 16)) ??
    rgb?.slice(1).map(Number) ?? [Number.NaN];
  if (found.length !== 3) throw new RangeError(`a colour must be #rgb, #rrggbb or rgb(), found ${colour}`);
  return found as [number, number, number];
}

/** The colour tokens the page has now, resolved by the browser. */
export function pageTokens(page: Page): Promise<Tokens> {
  return inPage<Tokens>(page, "tokens", ["ink", "paper", "quiet", "line", "night", "day"]);
}
