import { type PenPiece, penLine } from "../../words/penLine.ts";

/** What to read out, with blanks: who, where, what happened, how many, how they are, weather, helpers, battery. */
export function emergencyScript(areaName: string): PenPiece[][] {
  return [
    `We need help in ${areaName.replaceAll("_", " ")}, at site _. My name is _, I call by _.`,
    "Latitude _, longitude _, grid _.",
    "What happened: _, at _. Fell from _.",
    "People hurt: _. Awake: _, breathing: _, bleeding: _.",
    "Weather and wind: _. Helpers here: _. Battery left: _.",
  ].map(penLine);
}

/** Words of a script that are read aloud, without what fills the blanks. */
export function scriptWordCount(script: readonly PenPiece[][]): number {
  return script.flat().flatMap((piece) => piece.say.split(/\s+/).filter((word) => /\w/.test(word))).length;
}
