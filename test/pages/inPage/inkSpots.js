// Where marks of each kind and size, and hatched fields of 4 mm and more, stand on the page: one of each, in px of the page.
(kinds) => {
  const spots = [];
  const add = (kind, element) => {
    const box = element.getBoundingClientRect();
    const [x, y] = [box.left + scrollX, box.top + scrollY];
    const isKnown = spots.some((spot) => spot.kind === kind && Math.abs(spot.width - box.width) < 1);
    if (box.width > 0 && !isKnown) spots.push({ kind, x, y, width: box.width, height: box.height });
  };
  for (const kind of kinds) {
    for (const use of document.querySelectorAll(`svg use[href="#mark-${kind}"]`)) {
      const drawing = use.closest("svg");
      if (isSeen(drawing)) add(kind, drawing);
    }
  }
  const isHatched = (element) => /^url\(/.test(getComputedStyle(element).fill);
  const hatched = [...document.querySelectorAll("svg rect, svg path")].filter(
    (e) => isSeen(e) && isHatched(e),
  );
  const wide = hatched.find((element) => {
    const box = element.getBoundingClientRect();
    return element.tagName === "rect" && box.width >= 16 && box.height >= 8;
  });
  if (wide) add("hatch", wide);
  return spots;
};
