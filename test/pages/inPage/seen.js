// What is seen of a page: names for the other files of this folder, read as text before them. An expression.
(() => {
  const textOf = (node) => (node.textContent ?? "").replace(/\s+/g, " ").trim();

  const nameOf = (element) => {
    const classes = element.getAttribute("class");
    return `<${element.tagName.toLowerCase()}${classes ? ` class="${classes}"` : ""}> ${JSON.stringify(textOf(element).slice(0, 40))}`;
  };

  const ownText = (element) =>
    [...element.childNodes]
      .filter((node) => node.nodeType === 3)
      .map((node) => node.data)
      .join(" ")
      .trim();

  /** Words for those who hear the page: cut to one pixel, out of sight on purpose. */
  const isForHearing = (element) => {
    for (let one = element; one; one = one.parentElement) {
      const box = one.getBoundingClientRect();
      const style = getComputedStyle(one);
      const isCut = style.overflow === "hidden" && box.width <= 1;
      if (one !== document.body && (isCut || style.clipPath === "inset(50%)")) return true;
    }
    return false;
  };

  const isSeen = (element) => {
    if (!element.checkVisibility({ visibilityProperty: true })) return false;
    const box = element.getBoundingClientRect();
    return box.width > 0 && box.height > 0 && !isForHearing(element);
  };

  const seenTexts = () =>
    [...document.querySelectorAll("body *")].filter((e) => ownText(e) !== "" && isSeen(e));

  return { textOf, nameOf, ownText, isSeen, seenTexts };
})();
