// Stems as a sheet: arrow keys, typing, blocks, paste from a spreadsheet, undo. Only the rows in sight are in the page.

const HIGH = 44; // px a row
const SPARE = 6; // rows kept beyond the edge

class Sheet {
  constructor(table) {
    this.addresses = table.dataset;
    this.box = document.createElement("div");
    this.box.className = "sheet-box"; this.box.tabIndex = -1;
    this.tall = document.createElement("div"); this.tall.className = "tall";
    this.grid = document.createElement("div"); this.grid.className = "sheet-grid";
    this.grid.setAttribute("role", "grid"); this.grid.setAttribute("aria-label", "Stems");
    this.tall.append(this.grid); this.box.append(this.tall);
    this.refused = document.createElement("div"); this.refused.setAttribute("role", "alert");
    this.status = document.createElement("p"); this.status.setAttribute("role", "status"); this.status.className = "said";
    table.replaceWith(this.refused, this.status, this.box);
    this.at = [0, 0]; this.from = [0, 0]; this.wrong = new Map();
    this.box.addEventListener("scroll", () => this.show());
    this.grid.addEventListener("keydown", (event) => this.key(event));
    this.grid.addEventListener("pointerdown", (event) => this.point(event));
    this.grid.addEventListener("dblclick", () => this.edit());
    document.addEventListener("copy", (event) => this.copy(event));
    document.addEventListener("paste", (event) => this.paste(event));
    this.load();
  }

  async load() {
    const answer = await fetch(this.addresses.sheet);
    const sheet = await answer.json();
    this.columns = sheet.columns; this.rows = sheet.rows;
    this.draw();
    this.status.textContent = `${this.rows.length} stems. ${this.rows.length ? "" : "Type or paste into the empty row."}`;
  }

  draw() {
    // One empty row at the end takes new stems.
    this.count = this.rows.length + 1;
    this.grid.setAttribute("aria-rowcount", this.count + 1);
    this.grid.setAttribute("aria-colcount", this.columns.length);
    this.tall.style.height = `${(this.count + 1) * HIGH}px`;
    this.first = -1;
    this.show();
  }

  show() {
    const first = Math.max(0, Math.floor(this.box.scrollTop / HIGH) - SPARE);
    const last = Math.min(this.count, first + Math.ceil(this.box.clientHeight / HIGH) + 2 * SPARE);
    if (first === this.first && last === this.last && !this.stale) return;
    this.first = first; this.last = last; this.stale = false;
    const had = this.grid.contains(document.activeElement);
    this.grid.replaceChildren(this.headRow());
    for (let n = first; n < last; n++) this.grid.append(this.row(n));
    this.grid.style.top = "0";
    this.grid.querySelector(".head").style.marginBottom = `${first * HIGH}px`;
    if (had) this.cell(...this.at)?.focus({ preventScroll: true });
  }

  headRow() {
    const row = element("div", "sheet-row head", "row");
    row.setAttribute("aria-rowindex", 1);
    this.columns.forEach((column, n) => {
      const cell = element("div", `sheet-cell ${number(column) ? "number" : ""}`, "columnheader");
      cell.textContent = column.unit ? column.words : column.words;
      cell.setAttribute("aria-colindex", n + 1);
      row.append(cell);
    });
    return row;
  }

  row(n) {
    const row = element("div", "sheet-row", "row");
    row.setAttribute("aria-rowindex", n + 2);
    this.columns.forEach((column, m) => {
      const cell = element("div", `sheet-cell ${number(column) ? "number" : ""}`, m === 0 ? "rowheader" : "gridcell");
      cell.textContent = this.wrong.get(`${n}/${m}`) ?? this.value(n, m);
      cell.setAttribute("aria-colindex", m + 1);
      cell.dataset.row = n; cell.dataset.column = m;
      cell.tabIndex = n === this.at[0] && m === this.at[1] ? 0 : -1;
      if (this.inBlock(n, m)) cell.classList.add("chosen");
      if (this.wrong.has(`${n}/${m}`)) { cell.classList.add("wrong"); cell.setAttribute("aria-invalid", "true"); }
      row.append(cell);
    });
    return row;
  }

  value(n, m) { return n < this.rows.length ? this.rows[n][m] : ""; }
  cell(n, m) { return this.grid.querySelector(`[data-row="${n}"][data-column="${m}"]`); }
  block() {
    const [a, b] = this.from, [c, d] = this.at;
    return [Math.min(a, c), Math.min(b, d), Math.max(a, c), Math.max(b, d)];
  }
  inBlock(n, m) { const [a, b, c, d] = this.block(); return n >= a && n <= c && m >= b && m <= d && (a !== c || b !== d); }

  go(n, m, extend) {
    this.at = [Math.min(Math.max(n, 0), this.count - 1), Math.min(Math.max(m, 0), this.columns.length - 1)];
    if (!extend) this.from = [...this.at];
    const top = this.at[0] * HIGH, box = this.box;
    if (top < box.scrollTop) box.scrollTop = top;
    else if (top + 2 * HIGH > box.scrollTop + box.clientHeight - 4) box.scrollTop = top + 2 * HIGH - box.clientHeight + 8;
    this.stale = true; this.show();
    this.cell(...this.at)?.focus();
  }

  point(event) {
    const cell = event.target.closest(".sheet-cell[data-row]");
    if (!cell || cell.classList.contains("editing")) return;
    event.preventDefault();
    this.go(Number(cell.dataset.row), Number(cell.dataset.column), event.shiftKey);
  }

  key(event) {
    if (event.target.closest(".editing")) return;
    const [n, m] = this.at, ctrl = event.ctrlKey || event.metaKey;
    const moves = {
      ArrowUp: [n - 1, m], ArrowDown: [n + 1, m], ArrowLeft: [n, m - 1], ArrowRight: [n, m + 1],
      Home: ctrl ? [0, 0] : [n, 0], End: ctrl ? [this.count - 1, this.columns.length - 1] : [n, this.columns.length - 1],
      PageDown: [n + 10, m], PageUp: [n - 10, m],
    };
    if (moves[event.key]) { event.preventDefault(); return this.go(...moves[event.key], event.shiftKey); }
    if (ctrl) {
      const key = event.key.toLowerCase();
      if (key === "z" && !event.shiftKey) { event.preventDefault(); this.turn("undo"); }
      else if (key === "y" || (key === "z" && event.shiftKey)) { event.preventDefault(); this.turn("redo"); }
      return;
    }
    if (event.key === "Enter" || event.key === "F2") { event.preventDefault(); this.edit(); }
    else if (event.key === "Delete") { event.preventDefault(); this.clear(event.shiftKey); }
    else if (event.key.length === 1 && !event.altKey) { event.preventDefault(); this.edit(event.key); }
  }

  edit(start) {
    const [n, m] = this.at, column = this.columns[m], cell = this.cell(n, m);
    if (!cell) return;
    const input = column.choices.length ? document.createElement("select") : document.createElement("input");
    if (column.choices.length) {
      for (const choice of ["", ...column.choices]) input.append(new Option(choice || "not said", choice));
    } else input.type = "text";
    input.value = start !== undefined && !column.choices.length ? start : (this.wrong.get(`${n}/${m}`) ?? this.value(n, m));
    input.setAttribute("aria-label", `${column.words}, row ${n + 1}`);
    cell.textContent = ""; cell.classList.add("editing"); cell.append(input);
    input.focus();
    if (start === undefined && input.select) input.select();
    let over = false;
    const done = (keep, then) => {
      if (over) return;
      over = true;
      const value = input.value.trim();
      this.stale = true; this.show();
      if (keep) this.put([[n, m, value]]);
      if (then) this.go(...then);
    };
    input.addEventListener("keydown", (event) => {
      event.stopPropagation();
      if (event.key === "Enter") { event.preventDefault(); done(true, [n + 1, m]); }
      else if (event.key === "Tab") { event.preventDefault(); done(true, [n, m + (event.shiftKey ? -1 : 1)]); }
      else if (event.key === "Escape") { event.preventDefault(); done(false, [n, m]); }
    });
    input.addEventListener("blur", () => done(true));
  }

  clear(rows) {
    const [a, b, c, d] = this.block();
    if (rows) return this.send({ delete: this.rows.slice(a, c + 1).map((row) => row[0]) });
    const cells = [];
    for (let n = a; n <= c; n++) for (let m = b; m <= d; m++) cells.push([n, m, ""]);
    this.put(cells);
  }

  copy(event) {
    if (!this.grid.contains(document.activeElement) || document.activeElement.closest(".editing")) return;
    const [a, b, c, d] = this.block(), lines = [];
    for (let n = a; n <= c; n++) lines.push(Array.from({ length: d - b + 1 }, (_, k) => this.value(n, b + k)).join("\t"));
    event.clipboardData.setData("text/plain", lines.join("\n"));
    event.preventDefault();
  }

  paste(event) {
    if (!this.grid.contains(document.activeElement) || document.activeElement.closest(".editing")) return;
    event.preventDefault();
    const [a, b] = this.block();
    const lines = event.clipboardData.getData("text/plain").replace(/\r\n?/g, "\n").replace(/\n$/, "").split("\n");
    const cells = [];
    lines.forEach((line, i) => line.split("\t").forEach((value, k) => { if (b + k < this.columns.length) cells.push([a + i, b + k, value.trim()]); }));
    this.put(cells);
  }

  // Cells of rows that are there are changed; those beyond the end make new rows. All of it is one change.
  put(cells) {
    const changed = [], added = new Map();
    for (const [n, m, value] of cells) {
      if (n < this.rows.length) {
        if (this.rows[n][m] !== value) changed.push({ id: this.rows[n][0], column: this.columns[m].name, value, was: this.rows[n][m], at: `${n}/${m}` });
      } else if (value) {
        const row = added.get(n) ?? this.like(n);
        row[this.columns[m].name] = value;
        added.set(n, row);
      }
    }
    if (changed.length || added.size) this.send({ cells: changed, rows: [...added.values()] }, cells);
  }

  // A new row begins as the last one stands, but for its id, size and note: place and plant are mostly the same.
  like(n) {
    const held = this.pending?.get(n);
    if (held) return held;
    const last = this.rows.at(-1), row = {};
    if (last) this.columns.forEach((column, m) => { if (["patch", "species", "x_m", "y_m", "diameter_in", "measured_at", "stems", "form", "state"].includes(column.name)) row[column.name] = last[m]; });
    return row;
  }

  async send(what, cells = []) {
    const asked = { command: crypto.randomUUID(), cells: [], rows: [], delete: [], ...what };
    const answer = await this.post(this.addresses.post, JSON.stringify(asked));
    if (answer.ok) {
      for (const [n, m] of cells) this.wrong.delete(`${n}/${m}`);
      this.say("");
      return this.refresh();
    }
    for (const [n, m, value] of cells) this.wrong.set(`${n}/${m}`, value);
    this.say(answer.sentence);
    this.stale = true; this.show();
  }

  async turn(name) {
    const answer = await this.post(this.addresses[name], new URLSearchParams({ command: crypto.randomUUID() }));
    this.wrong.clear();
    this.say(answer.ok ? "" : answer.sentence);
    return this.refresh();
  }

  async post(address, body) {
    const token = document.querySelector("meta[name=csrf]").content;
    const kind = typeof body === "string" ? { "Content-Type": "application/json" } : {};
    try {
      const answer = await fetch(address, { method: "POST", headers: { "X-CSRFToken": token, Accept: "application/json", ...kind }, body });
      const said = (answer.headers.get("Content-Type") || "").includes("json") ? await answer.json() : { sentence: "Not changed. There was nothing to take back, or it was built upon." };
      return { ok: answer.ok, ...said };
    } catch {
      return { ok: false, sentence: "Stemward does not answer. What you typed is still here; try again." };
    }
  }

  async refresh() {
    const answer = await fetch(this.addresses.sheet);
    const sheet = await answer.json();
    this.rows = sheet.rows;
    this.draw();
    this.status.textContent = `${this.rows.length} stems. Saved.`;
    this.cell(...this.at)?.focus({ preventScroll: true });
  }

  say(sentence) {
    this.refused.className = sentence ? "wrong" : "";
    this.refused.textContent = sentence || "";
  }
}

function element(tag, name, role) {
  const made = document.createElement(tag);
  made.className = name.trim();
  made.setAttribute("role", role);
  return made;
}

function number(column) { return column.type === "number" || column.type === "count"; }

for (const table of document.querySelectorAll("table.sheet[data-sheet]")) new Sheet(table);
