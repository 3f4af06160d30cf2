import { type PenPiece, penLine } from "../../words/penLine.ts";

/** What the contact tells the emergency service, with blanks for what only the evening knows. */
export function overdueScript(facts: {
  areaName: string;
  people: string;
  vehicle: string | null;
  base: string | null;
}): PenPiece[][] {
  const { areaName, people, vehicle, base } = facts;
  return [
    `Somebody hunting in ${blankless(areaName)} is overdue.`,
    "Missing: _. Last heard at _, back by _.",
    "Seat in a tree, site _: latitude _, longitude _, grid _.",
    `The party is ${blankless(people)}, staying at ${base === null ? "_" : blankless(base)}.`,
    `Vehicle: ${vehicle === null ? "_" : blankless(vehicle)}.`,
    "Clothes and colour: _. Medical: _. My name is _, phone _.",
  ].map(penLine);
}

/** An owner's words as they are; an underscore in them is no blank. */
function blankless(text: string): string {
  return text.replaceAll("_", " ").replace(/\.$/, "");
}
