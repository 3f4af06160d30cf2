import { BANNED_WORDS } from "./bannedWords.ts";
import type { PageTexts } from "./pageTexts.ts";

const MOST_WORDS = 22;
const MOST_MEDIAN = 12;
/** Stands for words that are not ours. */
const APART = "Nn";
const POINT = "(?:N|NNE|NE|ENE|E|ESE|SE|SSE|S|SSW|SW|WSW|W|WNW|NW|NNW)";
const LIST = new RegExp(
  `(?:${POINT}|${APART}|calm|\\d+)(?:(?:, | and |, and | to |; )(?:${POINT}|${APART}|calm|\\d+))+`,
  "g",
);
/** A figure with its unit is one word to a reader. */
const FIGURE = /(\d) (?:mm|cm|m|km|ft|yd|mi|in|mph|kg|lb|s|min|h|%|°C|°F|degrees)(?![\p{L}])/gu;
const BEARINGS = /\d{3} to \d{3} \([^)]*\)(?:(?:, | and )\d{3} to \d{3} \([^)]*\))*/g;
/** What stands before the text of a row: "Lane A: ". */
const LABEL = /^(?:[^.:;]{1,60}: )+/;
const CLOCK = "\\d{1,2}:\\d\\d";

/**
 * Words of a page against the rules of wording: sentences over 22 words, a median over 12, banned words, a wind named without
 * "from", an estimated time without "about". Texts of `apart` (names and prose of the owner, titles of sources) count as one
 * word, so does a figure with its unit, and a run of names, figures or winds. A label before a colon stands for itself; after
 * it, and in a row that is no sentence, a semicolon ends an item.
 */
export function wordFaults(texts: PageTexts, apart: readonly string[]): string[] {
  const faults = new Set<string>();
  const lengths: number[] = [];
  for (const { text } of texts.blocks) {
    const own = withoutApart(text, apart);
    const isSentence = /[.!?]["”)]?$/.test(own);
    for (const sentence of sentencesOf(own, isSentence)) {
      const count = wordCount(sentence);
      if (isSentence && count >= 2) lengths.push(count);
      if (count > MOST_WORDS) faults.add(`${count} words in a sentence: "${sentence}"`);
    }
    for (const fault of [...bannedIn(own), ...windWithoutFrom(own), ...timeWithoutAbout(own)])
      faults.add(fault);
  }
  for (const { time, task } of texts.rows) {
    const isEstimate = /^(?:at the tree|sit until)/.test(task);
    if (isEstimate && /\d/.test(time) && !time.startsWith("about ")) {
      faults.add(`an estimated time without "about": "${time} ${task}"`);
    }
  }
  const middle = median(lengths);
  if (middle > MOST_MEDIAN) faults.add(`a median of ${middle} words a sentence`);
  return [...faults];
}

function withoutApart(text: string, apart: readonly string[]): string {
  let own = text;
  for (const words of apart) {
    if (!own.includes(words)) continue;
    // whole words only: a site called "Tin" must not eat into others
    const escaped = words.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
    const ends = /[.!?]$/.test(words) ? `${APART}.` : APART;
    own = own.replace(new RegExp(`(?<![\\p{L}\\d])${escaped}(?![\\p{L}\\d])`, "gu"), ends);
  }
  return own;
}

function sentencesOf(text: string, isSentence: boolean): string[] {
  const parts = text.split(/(?<=[.!?]["”)]?)\s+(?=["“(]?[A-Z0-9])/);
  return parts.flatMap((part) => {
    const rest = part.replace(LABEL, "");
    return isSentence && rest === part ? [part] : rest.split(/;\s+/);
  });
}

function wordCount(sentence: string): number {
  return sentence
    .replace(BEARINGS, "List")
    .replace(FIGURE, "$1")
    .replace(LIST, "List")
    .split(/\s+/)
    .filter((word) => /[\p{L}\d]/u.test(word)).length;
}

function median(values: number[]): number {
  if (values.length === 0) return 0;
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

function bannedIn(text: string): string[] {
  return BANNED_WORDS.flatMap((pattern) => {
    const found = pattern.exec(text);
    return found === null ? [] : [`the banned word "${found[0]}": "${around(text, found.index)}"`];
  });
}

function windWithoutFrom(text: string): string[] {
  const faults: string[] = [];
  for (const found of text.matchAll(new RegExp(`\\bwinds?\\b([^.;:]{0,30}?)\\b${POINT}\\b`, "gi"))) {
    const isPoint = new RegExp(`\\b${POINT}$`).test(found[0]);
    if (isPoint && !/\bfrom\b/.test(found[0]))
      faults.push(`a wind without "from": "${around(text, found.index)}"`);
  }
  const named = new RegExp(
    `\\b(?:${POINT} winds?|(?:north|south|east|west)\\w* winds?|(?:north|south|east|west)erl(?:y|ies))\\b`,
  );
  const found = named.exec(text);
  if (found !== null) faults.push(`a wind without "from": "${around(text, found.index)}"`);
  return faults;
}

function timeWithoutAbout(text: string): string[] {
  const estimates = new RegExp(
    `\\b(?:turns?|turning|sit until|sit from|usable light|sun on the ground|at the tree|until)(?: from| by| at| until)? ${CLOCK}`,
    "gi",
  );
  const walks = /(?<!about )(?<![\d.])\b\d+ min (?:in|out|on foot|walk)\b/gi;
  return [...text.matchAll(estimates), ...text.matchAll(walks)].map(
    (found) => `an estimated time without "about": "${around(text, found.index)}"`,
  );
}

function around(text: string, index: number): string {
  return text.slice(Math.max(0, index - 30), index + 60);
}
