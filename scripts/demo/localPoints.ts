/** A place in an area's own frame: metres east and north of the south-west corner of its box. */
export interface LocalPoint {
  x: number;
  y: number;
}

/** A place of the frame with the height of the ground there, metres above sea level. */
export interface ControlPoint extends LocalPoint {
  z: number;
}

/**
 * Points written as "x,y x,y", the short form in which the demonstration areas are described.
 *
 * @throws {RangeError} naming the word that is no pair of numbers
 */
export function localPoints(text: string): LocalPoint[] {
  return words(text).map((word) => {
    const [x, y] = numbersOf(word, 2);
    return { x: x!, y: y! };
  });
}

/**
 * Control points of a ridge or a stream, written as "x,y,z x,y,z".
 *
 * @throws {RangeError} naming the word that is no triple of numbers
 */
export function controlPoints(text: string): ControlPoint[] {
  return words(text).map((word) => {
    const [x, y, z] = numbersOf(word, 3);
    return { x: x!, y: y!, z: z! };
  });
}

function words(text: string): string[] {
  return text.trim().split(/\s+/);
}

function numbersOf(word: string, count: number): number[] {
  const numbers = word.split(",").map(Number);
  if (numbers.length !== count || !numbers.every(Number.isFinite)) {
    throw new RangeError(`expected ${count} numbers with commas between, found ${JSON.stringify(word)}`);
  }
  return numbers;
}
