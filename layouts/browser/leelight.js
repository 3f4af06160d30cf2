// Conveniences of a pack on a screen. Every page is whole without them.
(() => {
  rememberTheme();
  for (const table of document.querySelectorAll("table[data-find]")) findRows(table);

  /** Keeps the colours that were chosen from page to page, where the browser lets a page remember. */
  function rememberTheme() {
    const radios = document.querySelectorAll("input[name=theme]");
    try {
      const kept = document.getElementById(localStorage.getItem("leelight-theme") ?? "");
      if (kept?.name === "theme") kept.checked = true;
      for (const radio of radios) {
        radio.addEventListener("change", () => localStorage.setItem("leelight-theme", radio.id));
      }
    } catch {
      // a browser that remembers nothing shows the colours of the device
    }
  }

  /** A field over a long table that leaves the rows with the typed letters. */
  function findRows(table) {
    const rows = [...table.querySelectorAll("tbody tr")];
    if (rows.length < 7) return;
    const label = document.createElement("label");
    label.className = "find";
    label.append(`${table.dataset.find} `);
    const input = document.createElement("input");
    input.type = "search";
    input.className = "find__input";
    label.append(input);
    input.addEventListener("input", () => {
      const typed = input.value.trim().toLowerCase();
      for (const row of rows) row.hidden = !row.textContent.toLowerCase().includes(typed);
    });
    table.before(label);
  }
})();
