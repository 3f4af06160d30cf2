/**
 * The known word that a mistyped one most likely meant, or null when none is near. Capitals, spaces, hyphens and
 * underscores do not count; at most a third of the letters may differ (two neighbours exchanged count as one).
 *
 * @source Damerau 1964, A technique for computer detection and correction of spelling errors (optimal string alignment)
 * @example nearestWord("aspectdge", ["slopeDeg", "aspectDeg"]) // "aspectDeg"
 */
export function nearestWord(written: string, known: readonly string[]): string | null {
  const wanted = plain(written);
  if (wanted.length > 60) return null;
  let best: string | null = null;
  let bestSteps = Number.POSITIVE_INFINITY;
  for (const word of known) {
    const candidate = plain(word);
    const allowed = Math.max(1, Math.floor(Math.max(wanted.length, candidate.length) / 3));
    if (Math.abs(candidate.length - wanted.length) > allowed) continue;
    const steps = editSteps(wanted, candidate);
    if (steps <= allowed && steps < bestSteps && steps < candidate.length) {
      best = word;
      bestSteps = steps;
    }
  }
  return best;
}

function plain(word: string): string {
  return word.toLowerCase().replace(/[\s_-]/g, "");
}

function editSteps(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      let steps = Math.min(change, last[j]! + 1, row[j - 1]! + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        steps = Math.min(steps, beforeLast[j - 2]! + 1);
      }
      row.push(steps);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
