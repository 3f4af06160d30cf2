// Things to tap that are too small for a cold thumb, or too near each other.
({ leastPx, apartPx }) => {
  const boxOf = (element) => {
    const boxes = [element, ...(element.labels ?? [])]
      .map((one) => one.getBoundingClientRect())
      .filter((box) => box.width > 1 && box.height > 1);
    if (boxes.length === 0) return null;
    return {
      l: Math.min(...boxes.map((box) => box.left)),
      r: Math.max(...boxes.map((box) => box.right)),
      t: Math.min(...boxes.map((box) => box.top)),
      b: Math.max(...boxes.map((box) => box.bottom)),
    };
  };
  const isInSentence = (element) => {
    if (getComputedStyle(element).display !== "inline") return false;
    let block = element.parentElement;
    while (getComputedStyle(block).display === "inline") block = block.parentElement;
    return (
      textOf(block)
        .replace(textOf(element), "")
        .replace(/[\s.,;:]/g, "") !== ""
    );
  };
  const targets = [...document.querySelectorAll("a[href], button, input, select, textarea, summary")]
    .filter((element) => element.checkVisibility({ visibilityProperty: true }) && element.type !== "hidden")
    .filter((element) => !isInSentence(element))
    .map((element) => ({ element, box: boxOf(element) }))
    // one that comes into sight by the keyboard alone is no target for a thumb
    .filter(({ box }) => box !== null && box.b > 0 && box.r > 0);
  const faults = [];
  for (const { element, box } of targets) {
    const [width, height] = [box.r - box.l, box.b - box.t];
    if (width < leastPx - 0.5 || height < leastPx - 0.5)
      faults.push(`a target of ${Math.round(width)} x ${Math.round(height)} px: ${nameOf(element)}`);
  }
  targets.forEach((one, i) => {
    for (const other of targets.slice(i + 1)) {
      if (one.element.contains(other.element) || other.element.contains(one.element)) continue;
      const across = Math.max(one.box.l, other.box.l) - Math.min(one.box.r, other.box.r);
      const down = Math.max(one.box.t, other.box.t) - Math.min(one.box.b, other.box.b);
      const apart = Math.max(across, down);
      if (apart < apartPx - 0.5)
        faults.push(
          `targets ${Math.round(apart)} px apart: ${nameOf(one.element)} and ${nameOf(other.element)}`,
        );
    }
  });
  return faults;
};
