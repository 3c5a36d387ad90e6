// Adds to the ledger: sorting by a column, and a sieve for words, phase and source.
// The page is complete without it. Words come from the page, so that they are in its language.
"use strict";
(() => {
  const form = document.querySelector("form.sieve");
  const tables = [...document.querySelectorAll("table.sortable")];
  if (!form || !tables.length) return;

  const status = form.querySelector("[role=status]");
  const all = status.textContent;
  const rows = tables.flatMap((table) => [...table.tBodies[0].rows]);
  const texts = new Map(rows.map((row) => [row, row.textContent.toLocaleLowerCase()]));
  const at = Object.fromEntries([...tables[0].querySelectorAll("th[data-key]")].map((heading) => [heading.dataset.key, heading.cellIndex]));
  const said = (row, key) => row.cells[at[key]].textContent.trim().replace(/\s+/g, " ");

  // Only an episode's first line leads to it; sorted or sifted, any line may be the first.
  const ways = new Map(rows.map((row) => [said(row, "episode"), row.cells[at.episode].firstElementChild]).filter((way) => way[1]));
  for (const row of rows) {
    const cell = row.cells[at.episode];
    if (!cell.firstElementChild) cell.replaceChildren(ways.get(said(row, "episode")).cloneNode(true));
  }

  const sift = () => {
    const words = form.elements.words.value.toLocaleLowerCase().split(/\s+/).filter(Boolean);
    const phase = form.elements.phase.value;
    const source = form.elements.source.value;
    let shown = 0;
    for (const row of rows) {
      const fits =
        words.every((word) => texts.get(row).includes(word)) &&
        (!phase || said(row, "phase") === phase) &&
        (!source || said(row, "source") === source);
      row.hidden = !fits;
      shown += fits ? 1 : 0;
    }
    for (const table of tables) table.tFoot.hidden = shown !== rows.length;
    status.textContent = shown === rows.length ? all : `${shown} / ${rows.length}`;
  };

  // Amounts are written with all their decimals, so their digits alone put them in order.
  const value = (row, heading) => {
    const text = row.cells[heading.cellIndex].textContent.trim();
    if (!heading.matches(".sum, .many")) return text;
    const digits = Number(text.replace(/\D/g, ""));
    return /^\D*[-\u2212]/.test(text) ? -digits : digits;
  };

  const compare = (one, two) =>
    typeof one === "number" && typeof two === "number" ? one - two : String(one).localeCompare(String(two), document.documentElement.lang);

  const sort = (table, heading) => {
    const up = heading.getAttribute("aria-sort") !== "ascending";
    for (const other of table.tHead.rows[0].cells) if (other.querySelector("button")) other.setAttribute("aria-sort", "none");
    heading.setAttribute("aria-sort", up ? "ascending" : "descending");
    const sorted = [...table.tBodies[0].rows]
      .map((row, at) => [value(row, heading), at, row])
      .sort((one, two) => (up ? 1 : -1) * compare(one[0], two[0]) || one[1] - two[1]);
    table.tBodies[0].append(...sorted.map((entry) => entry[2]));
  };

  for (const table of tables) {
    for (const heading of table.querySelectorAll("thead th[data-key]")) {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "sort";
      button.textContent = heading.textContent;
      button.addEventListener("click", () => sort(table, heading));
      heading.replaceChildren(button);
      heading.setAttribute("aria-sort", "none");
    }
  }
  form.hidden = false;
  form.addEventListener("input", sift);
  form.addEventListener("submit", (event) => event.preventDefault());
})();
