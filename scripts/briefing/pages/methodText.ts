/** How the numbers come about, in plain words with their published sources. */
export const METHOD_STEPS: readonly { title: string; text: string }[] = [
  {
    title: "Sun and moon",
    text: "Computed for each civil day of the area's zone, with a flat horizon and usual refraction. Sunrise and sunset: upper edge of the sun on the horizon. First and last light: sun 6 degrees down, unless the area says otherwise. Legal hours follow the owner's rule, with its own rounding.",
  },
  {
    title: "Sun on the slope",
    text: "The skyline around the site comes from the elevation data (Horn 1981 for slope and facing). Sunshine: Kasten and Young 1989 for the air, Haurwitz 1945 for a clear sky, Kasten and Czeplak 1980 for cloud. Heat that goes to the sky: FAO Paper 56.",
  },
  {
    title: "Slope air",
    text: "Air rises once the slope has gained heat for a while, and falls once it has lost it for a while. Between the two it turns. Seventeen runs with other cloud, slope, skyline and delays give the earliest and latest time. Speeds: Schroeder and Buck 1970, Whiteman 2000.",
  },
  {
    title: "Wind at the site",
    text: "The forecast wind at 10 m is cut down for the cover (Andrews 2012) and for ground upwind (Winstral and others 2002). Table winds are named in the captions.",
  },
  {
    title: "Drift and verdict",
    text: "Wind and slope air add up to a drift with a spread. The chance that it goes towards an expected approach gives the verdict (Mardia and Jupp 2000). A local note outranks the model for the cells it names; it never lifts a STOP.",
  },
  {
    title: "Session",
    text: "The session is judged every 5 minutes. The sit is the longest stretch without a lasting avoid. Sit until is rounded down to a quarter hour, sit from up.",
  },
  {
    title: "Walking",
    text: "Tobler 1993 over the ground along the way, slower off the track, in the dark and with a load. Times are printed outward to 5 minutes. An owner's own figure is used first.",
  },
  {
    title: "Tree and stand",
    text: "Diameter from the girth. A trunk loses 5 to 15 mm of diameter a metre when one girth is given. Both ends must fit the label of the stand.",
  },
];

/** What the model does not know. */
export const LIMITS: readonly string[] = [
  "Snow, wet soil, leaves on or off the trees, and trees on the skyline are not in the model.",
  "Air under a closed crown may drain by day while it climbs above. The model does not have this.",
  "Left to local notes: valley wind on lower slopes after mid-morning, sea breeze, storm outflow, fog pools and gaps that funnel the wind.",
  "Scent leaves the platform at 4 to 6 m (13 to 20 ft). Open wind there is over twice the figure at nose height. In the open the general wind matters more than shown.",
  "Shelter and cover factors were published for other purposes.",
  "Suits is a statement about averages over minutes. A deer may still smell one gust.",
  "Elevation data can be wrong by metres. A backstop on the map is not a backstop seen.",
  "The pack can not see trees, harness, stand, people, stock or weather on the day. The person standing there decides.",
];

/** The words of the pack and what they mean. */
export const TERMS: readonly { term: string; meaning: string }[] = [
  { term: "Wind from", meaning: "Wind is named by where it comes from. Each row spans 22.5 degrees." },
  {
    term: "Bearing",
    meaning: "Degrees clockwise from true north, 000 to 359, unless the word magnetic stands beside it.",
  },
  { term: "Falling", meaning: "Slope air that drains downhill." },
  { term: "Rising", meaning: "Slope air that climbs uphill." },
  { term: "Turning", meaning: "Slope air between the two: it may go any way. A span, never a minute." },
  {
    term: "First light, last light",
    meaning:
      "Sun 6 degrees down, unless the area says otherwise. Neither legal time nor a promise of usable light.",
  },
  {
    term: "Legal hours",
    meaning: "By the rule that the owner entered, with its source and the day it was checked.",
  },
  {
    term: "Usable light",
    meaning: "An estimate under the cover of the site. It is never merged with legal hours.",
  },
  { term: "am, pm", meaning: "Morning session and evening session." },
  {
    term: "Local note",
    meaning:
      "What a person saw at the site. It outranks the model for the cells it names; a star marks them.",
  },
  {
    term: "No-shoot bearing",
    meaning: "A bearing with people, a road, a building, another site, or no backstop.",
  },
  { term: "About", meaning: "An estimate. Turns to a quarter hour, usable light and walks to 5 minutes." },
];

export const RESULTS: readonly { word: string; meaning: string }[] = [
  { word: "OK", meaning: "The figures entered pass. It certifies nothing." },
  { word: "CAUTION", meaning: "Near a limit, or a guessed figure." },
  { word: "STOP", meaning: "A limit is broken. A good wind does not outweigh it." },
  { word: "NOT CHECKED", meaning: "Something is not known. It never counts as OK." },
];

export const LIKELIHOODS: readonly { word: string; meaning: string }[] = [
  { word: "Nearly always", meaning: "over 9 in 10" },
  { word: "Usually", meaning: "over 2 in 3" },
  { word: "Sometimes", meaning: "1 in 3 to 2 in 3" },
  { word: "Seldom", meaning: "under 1 in 3" },
];
