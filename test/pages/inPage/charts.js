// Drawings without words, and figures drawn that stand nowhere in the text.
() => {
  const faults = [];
  const words = [...document.querySelectorAll("body *")]
    .filter((element) => !element.closest("svg") && ownText(element) !== "")
    .map(ownText)
    .join(" | ");
  for (const drawing of document.querySelectorAll("svg")) {
    if (drawing.parentElement.closest("svg")) continue;
    const label = drawing.getAttribute("aria-labelledby");
    if (drawing.getAttribute("aria-hidden") === "true") {
      if (drawing.querySelector("text")) faults.push(`a hidden drawing with texts: ${nameOf(drawing)}`);
      continue;
    }
    const named = (label ?? "").split(" ").map((id) => (id === "" ? null : document.getElementById(id)));
    const isWhole =
      drawing.getAttribute("role") === "img" &&
      named.length >= 2 &&
      named.every((element) => element !== null && drawing.contains(element) && textOf(element) !== "") &&
      named.some((element) => element.tagName === "title") &&
      named.some((element) => element.tagName === "desc");
    if (!isWhole) {
      faults.push(`a drawing without title and description: ${nameOf(drawing)}`);
      continue;
    }
    const title = textOf(drawing.querySelector("title"));
    const desc = textOf(drawing.querySelector("desc"));
    const count = (text) => text.split(" ").length;
    if (count(title) > 12) faults.push(`a chart title of ${count(title)} words: "${title}"`);
    if (count(desc) > 60) faults.push(`a chart description of ${count(desc)} words: "${desc.slice(0, 60)}"`);
    for (const text of drawing.querySelectorAll("text")) {
      for (const [figure] of textOf(text).matchAll(/\d+(?:[:.]\d+)*/g)) {
        // the hours of the axis are its scale, not a finding
        const isAxis = /^\d{1,2}$/.test(textOf(text)) || text.matches("[data-axis]");
        const stands = new RegExp(`(?<![\\d:.])${figure.replace(/\./g, "\\.")}(?![\\d:]|\\.\\d)`).test(words);
        if (!isAxis && !stands) faults.push(`the drawn figure ${figure} stands in no text: "${title}"`);
      }
    }
  }
  return [...new Set(faults)];
};
