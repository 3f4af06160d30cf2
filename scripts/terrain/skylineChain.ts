/** Straight pieces over the lateral ratio t: piece i starts at `from[i]` with `rise[i]`, and rises `perT[i]` per t. */
export interface Chain {
  pieces: number;
  from: Float64Array;
  rise: Float64Array;
  perT: Float64Array;
}

/** An empty chain with room for a number of pieces. */
export function chainOf(room: number): Chain {
  return {
    pieces: 0,
    from: new Float64Array(room),
    rise: new Float64Array(room),
    perT: new Float64Array(room),
  };
}

/**
 * The higher of two chains at every t from `tLow` to `tHigh`.
 *
 * @param room   a chain that may be overwritten
 * @returns `room`, or a larger chain when it is too small
 */
export function higherOfBoth(a: Chain, b: Chain, tLow: number, tHigh: number, room: Chain): Chain {
  const most = 2 * (a.pieces + b.pieces) + 2;
  const out = room.from.length < most ? chainOf(2 * most) : room;
  const { from: aFrom, rise: aRise, perT: aPerT, pieces: aPieces } = a;
  const { from: bFrom, rise: bRise, perT: bPerT, pieces: bPieces } = b;
  const { from, rise, perT } = out;
  let i = 0;
  while (i + 1 < aPieces && aFrom[i + 1]! <= tLow) i++;
  let j = 0;
  let count = 0;
  // Whether the piece written last is the one at hand, of a or of b: it goes on then.
  let isOnA = false;
  let isOnB = false;
  let low = tLow;
  let aEnd = i + 1 < aPieces ? aFrom[i + 1]! : 2;
  let bEnd = bPieces > 1 ? bFrom[1]! : 2;
  let aSlope = aPerT[i]!;
  let bSlope = bPerT[0]!;
  let aLow = aRise[i]! + aSlope * (low - aFrom[i]!);
  let bLow = bRise[0]!;
  while (low < tHigh) {
    let high = Math.min(aEnd, bEnd);
    if (high > tHigh) high = tHigh;
    const width = high - low;
    const aHigh = aLow + aSlope * width;
    const bHigh = bLow + bSlope * width;
    const leadLow = bLow - aLow;
    const leadHigh = bHigh - aHigh;
    if (leadLow <= 0 && leadHigh <= 0) {
      if (!isOnA) {
        from[count] = low;
        rise[count] = aLow;
        perT[count++] = aSlope;
        isOnA = true;
        isOnB = false;
      }
    } else if (leadLow >= 0 && leadHigh >= 0) {
      if (!isOnB) {
        from[count] = low;
        rise[count] = bLow;
        perT[count++] = bSlope;
        isOnA = false;
        isOnB = true;
      }
    } else {
      const share = (width * leadLow) / (leadLow - leadHigh);
      const isFirstA = leadLow < 0;
      if (!(isFirstA ? isOnA : isOnB)) {
        from[count] = low;
        rise[count] = isFirstA ? aLow : bLow;
        perT[count++] = isFirstA ? aSlope : bSlope;
      }
      from[count] = low + share;
      rise[count] = isFirstA ? bLow + bSlope * share : aLow + aSlope * share;
      perT[count++] = isFirstA ? bSlope : aSlope;
      isOnA = !isFirstA;
      isOnB = isFirstA;
    }
    low = high;
    if (aEnd <= high && i + 1 < aPieces) {
      i++;
      aEnd = i + 1 < aPieces ? aFrom[i + 1]! : 2;
      aSlope = aPerT[i]!;
      aLow = aRise[i]!;
      isOnA = false;
    } else {
      aLow = aHigh;
    }
    if (bEnd <= high && j + 1 < bPieces) {
      j++;
      bEnd = j + 1 < bPieces ? bFrom[j + 1]! : 2;
      bSlope = bPerT[j]!;
      bLow = bRise[j]!;
      isOnB = false;
    } else {
      bLow = bHigh;
    }
  }
  out.pieces = count;
  return out;
}
