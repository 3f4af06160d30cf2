/** What a check is called on a page. */
const TITLES: Readonly<Record<string, string>> = {
  C1: "Legal hours",
  C2: "Set-back",
  C3: "Closed bearings",
  C4: "Ground behind the animal",
  C5: "Trunk and stand",
  C6: "Load",
  C7: "Harness and straps",
  C8: "Platform height",
  C9: "Haul line",
  C10: "Wind on the tree",
  C11: "Thunder",
  C12: "Walking in the dark",
  C13: "Leaving time",
  C14: "Start down",
  C15: "Overdue",
  C16: "Water crossings",
  C17: "Helicopter spot",
  C18: "Contact",
  C19: "Hours awake",
  C20: "Meat",
  C21: "Carrying out",
  C22: "Stand dates",
  C23: "Tree",
  C24: "Hunters apart",
  C25: "Position",
  C26: "Age of facts",
  C27: "Privacy",
  C28: "Fire ban",
  C29: "Cold",
  C30: "Boundary",
};

/**
 * What a check is called.
 *
 * @throws {RangeError} when there is no such check
 */
export function checkTitle(id: string): string {
  const title = TITLES[id];
  if (title === undefined) throw new RangeError(`there is no check ${id}`);
  return title;
}
