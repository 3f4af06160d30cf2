/** One item: the thing to touch or look at, and the state it must be in. */
export interface ChecklistItem {
  item: string;
  state: string;
}

/** A list of at most nine items, the most dangerous omission first; the page closes it with "List complete". */
export interface Checklist {
  title: string;
  /** items have an order and carry numbers */
  numbered: boolean;
  note: string | null;
  items: ChecklistItem[];
}

/** The lists of a sit in the order in which they are used. They certify nothing: labels, law and the person there decide. */
export const CHECKLISTS: readonly Checklist[] = [
  list("Before the climb: you", null, [
    "Harness: full body, every buckle closed",
    "Tree strap: round the trunk, clipped on, feet on the ground",
    "You: slept, well, sober",
    "Label of the harness: in date, no fall, no damage",
    "Relief strap: on the harness, in reach",
    "Phone, whistle, knife: on the body",
    "Contact: knows the site and both times",
  ]),
  list("Before the climb: tree and stand", null, [
    "Tree: alive, sound, straight, no dead limb above",
    "Trees beside it: nothing dead that can fall here",
    "Trunk: fits the stand at the foot and at the seat",
    "Bark: dry and firm, no ice",
    "Stand: pins, cables, chains and welds whole",
    "Both halves: roped together",
    "Load: under the label, with all that comes up",
    "Nests and wires: none",
    "Landing: clear of stakes, stubs and rocks",
  ]),
  list("Before the climb: weather and line", null, [
    "Thunder: none heard, none expected",
    "Freezing rain and ice: none",
    "Wind: trunk steady, feet do not shift",
    "Haul line: reaches the ground with 2 m (7 ft) to spare",
    "Lamp and spare: on the body",
    "Drift at the foot: away from the deer",
  ]),
  list("Climb", null, [
    "Tree strap: moved up before the feet, at eye level or above",
    "Hands: empty, three points on the tree",
    "Tether: over the shoulder, never under an arm or across the neck",
    "Moves: short, each half set firm before the next",
    "At the seat: tether above the head, almost no slack",
  ]),
  list(
    "Haul the weapon",
    "Bow: arrows in a covered quiver. Crossbow: not drawn. Muzzle-loader: cap or primer off.",
    [
      "Weapon: unloaded, magazine out",
      "Action: open",
      "Muzzle: covered",
      "Knots: weapon hangs muzzle down, nothing near the trigger",
      "Place: on the far side of the tree from your climb",
      "Line: tucked, pulls free, not tied to you",
      "You: seated and tied in before you haul",
      "Barrel: looked through and clear",
      "Load: now, muzzle away from people",
    ],
    true,
  ),
  list("Aloft", null, [
    "Tether: tied in, short, over the shoulder",
    "Closed bearings: pointed out one by one",
    "Backstop: earth seen behind each lane",
    "Partner: told that you are up",
    "Wind at the seat: written on the day sheet",
    "Sleep: nodded off once means come down",
  ]),
  list(
    "Down",
    null,
    [
      "Weapon: unloaded, action open",
      "Weapon: lowered muzzle down, to the far side",
      "Tree strap: clipped, moved down with you",
      "Hands: empty, lamp on the head",
      "Feet: on the ground before you unclip",
      "Barrel: looked through again and clear",
      "Bright cloth: on you",
      "Partner: told that you are down",
    ],
    true,
  ),
  list(
    "After the shot",
    "After a bow shot wait about 30 to 45 min, after a hit behind the chest about 4 to 6 h.",
    [
      "Weapon: reloaded, safety catch on, muzzle away from people",
      "Last sight: bearing, distance and landmark written, with the time",
      "You: calm before you move",
      "Weapon: unloaded and lowered",
      "You: tied on until the feet stand on the ground",
      "First sign: marked before you follow",
      "Rule for following up: read, below",
      "Contact: told if you will be late",
    ],
    true,
  ),
];

function list(title: string, note: string | null, lines: string[], numbered = false): Checklist {
  const items = lines.map((line) => {
    const cut = line.indexOf(": ");
    return { item: line.slice(0, cut), state: line.slice(cut + 2) };
  });
  return { title, numbered, note, items };
}
