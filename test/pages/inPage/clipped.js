// Texts cut off by their box or spilling from it, and labels of drawings that leave the drawing or touch each other.
() => {
  const faults = [];
  for (const element of document.querySelectorAll("body *")) {
    if (element.closest("svg, [data-scroll]") || !isSeen(element) || textOf(element) === "") continue;
    const style = getComputedStyle(element);
    if (style.display.startsWith("inline") && style.display !== "inline-block") continue;
    const over = element.scrollHeight - element.clientHeight;
    const wide = element.scrollWidth - element.clientWidth;
    const isCut = style.overflowX !== "visible" || style.overflowY !== "visible";
    if (isCut && (over > 1 || wide > 1))
      faults.push(`cuts off ${Math.max(over, wide)} px: ${nameOf(element)}`);
    // letters reach a little out of a tight line
    else if (over > 0.35 * Number.parseFloat(style.fontSize) + 1 && element.clientHeight > 0)
      faults.push(`spills ${over} px below its box: ${nameOf(element)}`);
  }
  for (const drawing of document.querySelectorAll("svg")) {
    if (!isSeen(drawing)) continue;
    const frame = drawing.getBoundingClientRect();
    const title = textOf(drawing.querySelector("title") ?? drawing).slice(0, 40);
    const boxes = [...drawing.querySelectorAll("text")].filter(isSeen).map((label) => {
      const box = label.getBoundingClientRect();
      // the box of a font is higher than its letters
      const slack = 0.2 * box.height;
      return { text: textOf(label), l: box.left, r: box.right, t: box.top + slack, b: box.bottom - slack };
    });
    for (const box of boxes) {
      const isOut =
        box.l < frame.left - 0.5 ||
        box.r > frame.right + 0.5 ||
        box.t < frame.top - 0.5 ||
        box.b > frame.bottom + 0.5;
      if (isOut) faults.push(`label "${box.text}" leaves the drawing "${title}"`);
    }
    boxes.forEach((one, i) => {
      for (const other of boxes.slice(i + 1)) {
        const isApart = one.r <= other.l || other.r <= one.l || one.b <= other.t || other.b <= one.t;
        if (!isApart) faults.push(`labels "${one.text}" and "${other.text}" touch in "${title}"`);
      }
    });
  }
  return [...new Set(faults)];
};
