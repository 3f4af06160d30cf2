// Runs inside a page and returns what is wrong with it, and what it links to. An expression: it is read as text.
(() => {
  const faults = [];
  const name = (element) => {
    // biome-ignore lint/performance/useDomNodeTextContent: what is seen
    const text = (element.innerText ?? element.textContent ?? "").trim().replace(/\s+/g, " ").slice(0, 40);
    const classes = element.getAttribute("class");
    return `<${element.tagName.toLowerCase()}${classes ? ` class="${classes}"` : ""}> ${JSON.stringify(text)}`;
  };

  if (!document.documentElement.lang) faults.push("the page names no language");
  if (document.title.trim() === "") faults.push("the page has no title");
  const headings = document.querySelectorAll("h1").length;
  if (headings !== 1) faults.push(`the page has ${headings} main headings instead of one`);

  const ids = [...document.querySelectorAll("[id]")].map((element) => element.id);
  for (const id of new Set(ids.filter((id, i) => ids.indexOf(id) !== i)))
    faults.push(`the id "${id}" is used twice`);

  for (const table of document.querySelectorAll("table")) {
    const caption = table.caption?.textContent.trim();
    const label = caption ? `table "${caption.slice(0, 40)}"` : "a table";
    if (!caption) faults.push(`a table has no caption: ${name(table)}`);
    if (table.querySelector("th") === null) faults.push(`${label} has no heads`);
    for (const head of table.querySelectorAll("th")) {
      if (!head.hasAttribute("scope")) faults.push(`${label} has a head without scope: ${name(head)}`);
    }
    for (const cell of table.querySelectorAll("td, th")) {
      const pictures = cell.querySelector("img[alt]:not([alt='']), svg title, svg[aria-label]");
      if (cell.textContent.trim() === "" && pictures === null) {
        const row = cell.parentElement;
        faults.push(`${label} has an empty cell in row ${row.rowIndex + 1}: ${name(row)}`);
      }
    }
  }

  const wrong = /\bNaN\b|\bundefined\b|\bnull\b|\[object|\bInvalid Date\b|\{\{|\{%/;
  // biome-ignore lint/performance/useDomNodeTextContent: what is seen, without scripts and hidden parts
  const words = [document.body.innerText, document.title];
  for (const element of document.querySelectorAll(
    "[alt], [title], [aria-label], svg text, svg title, svg desc",
  )) {
    words.push(
      element.getAttribute("alt"),
      element.getAttribute("title"),
      element.getAttribute("aria-label"),
    );
    if (element.closest("svg")) words.push(element.textContent);
  }
  for (const text of words) {
    const found = text && wrong.exec(text);
    if (found)
      faults.push(
        `says "${text.slice(Math.max(0, found.index - 30), found.index + 30).replace(/\s+/g, " ")}"`,
      );
  }

  const width = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > width) {
    faults.push(`is ${document.documentElement.scrollWidth} px wide on a screen of ${width} px`);
  }
  const reach = (element) => {
    const box = element.getBoundingClientRect();
    return box.width > 1 && box.height > 1 ? box.right : 0;
  };
  for (const element of document.querySelectorAll("body *")) {
    const parent = element.parentElement;
    if (parent.closest("[data-scroll], svg") !== null) continue;
    // the outermost one is named, not all that is in it
    if (reach(element) > width + 0.5 && reach(parent) <= width + 0.5) {
      faults.push(`reaches ${Math.ceil(reach(element))} px on a screen of ${width} px: ${name(element)}`);
    }
  }

  for (const image of document.querySelectorAll("img")) {
    if (!image.hasAttribute("alt")) faults.push(`an image has no words: ${image.getAttribute("src")}`);
  }

  const addresses = (selector, attribute) =>
    [...document.querySelectorAll(selector)].map((element) => element.getAttribute(attribute));
  const links = [...addresses("a[href], area[href]", "href"), ...addresses("use", "href")];
  const parts = [
    ...addresses("link[href]", "href"),
    ...addresses("[src]", "src"),
    ...addresses("object[data]", "data"),
    ...addresses("[srcset]", "srcset").flatMap((set) =>
      set.split(",").map((one) => one.trim().split(/\s+/)[0]),
    ),
  ];
  return { faults: [...new Set(faults)], ids, links, parts };
})();
