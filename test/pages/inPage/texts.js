// Blocks of text in reading order, prose of the owner apart; and the rows of schedules as time and task.
() => {
  const BLOCKS =
    "p, li, dd, dt, td, th, caption, h1, h2, h3, h4, summary, figcaption, legend, label, title, desc";
  const blocks = [...document.querySelectorAll(BLOCKS)]
    .filter((element) => element.closest(".prose") === null && element.closest("head") === null)
    .map((element) => {
      const copy = element.cloneNode(true);
      for (const inner of copy.querySelectorAll(
        `${BLOCKS}, ul, ol, table, dl, svg, .schedule__narrow, .screen-only-line`,
      ))
        inner.remove();
      return { kind: element.tagName.toLowerCase(), text: textOf(copy) };
    })
    .filter(({ text }) => text !== "");
  const cells = (row) => [...row.cells].map(textOf);
  const rows = [...document.querySelectorAll("table")]
    .filter((table) =>
      ["Time", "Do"].every((head) =>
        [...table.querySelectorAll("thead th")].some((th) => textOf(th) === head),
      ),
    )
    .flatMap((table) => [...table.querySelectorAll("tbody tr")])
    .map(cells)
    .map((row) => ({ time: row[0], task: row.at(-1) }));
  return { blocks, rows };
};
