/** A piece of a sentence to read out or fill in: words, then a blank for the pen or none. */
export interface PenPiece {
  say: string;
  blank: boolean;
}

/**
 * A sentence with blanks, cut at each underscore.
 *
 * @example penLine("This is _, by _.") // [{say: "This is", blank: true}, {say: ", by", blank: true}, {say: ".", blank: false}]
 */
export function penLine(text: string): PenPiece[] {
  const parts = text.split("_").map((part) => part.trim());
  return parts
    .map((say, i) => ({ say, blank: i < parts.length - 1 }))
    .filter((piece) => piece.blank || piece.say !== "");
}
