const WORDS: Readonly<Record<string, string>> = {
  "0": "zero",
  "1": "one",
  "2": "two",
  "3": "three",
  "4": "four",
  "5": "five",
  "6": "six",
  "7": "seven",
  "8": "eight",
  "9": "nine",
  ".": "point",
  "-": "minus",
};

/**
 * A figure as it is read over a phone: every digit by itself, letters as letters.
 *
 * @example spokenDigits("-45.03") // "minus four five point zero three"
 */
export function spokenDigits(figure: string): string {
  return [...figure.replace(/\s+/g, "")].map((sign) => WORDS[sign] ?? sign).join(" ");
}
