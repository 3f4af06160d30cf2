/** What is old or out of range on a day, so that the page of that day must say so. */
export interface Stale {
  forecast: boolean;
  lawCheck: boolean;
  magneticModel: boolean;
}

const SAID: Record<keyof Stale, { what: string; words: RegExp }> = {
  forecast: { what: "an old forecast", words: /\bold forecast\b/i },
  lawCheck: { what: "a law checked over 12 months ago", words: /\bOLD\b(?! FORECAST)|over 12 months/ },
  magneticModel: {
    what: "a magnetic model out of its years",
    words: /(?:magnetic|declination|compass)[^.]{0,80}(?:not on|not known|NOT CHECKED|ends)/i,
  },
};

/** Old facts that a page uses and does not call old in words; and facts it calls old though they are fresh. */
export function staleFaults(text: string, stale: Stale): string[] {
  return (Object.keys(SAID) as (keyof Stale)[]).flatMap((key) => {
    const { what, words } = SAID[key];
    if (words.test(text) === stale[key]) return [];
    return [stale[key] ? `does not say that it uses ${what}` : `speaks of ${what} though there is none`];
  });
}
