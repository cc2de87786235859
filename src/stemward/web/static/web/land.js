// The land as a scaled drawing on one canvas: seen, moved, drawn on by mouse, by keyboard, or by bearing and paces.
// Every list on the page holds the same; this is a second way in, not the only one.

const FT = 0.3048;
const HIT = 22; // half of a 44 px target
const SMALL = 10; // symbols under this many pixels are dots
const PACE_FT = 2.5; // one step (common practice, no source)

class Land {
  constructor(figure) {
    this.figure = figure;
    this.canvas = figure.querySelector("canvas");
    this.pen = this.canvas.getContext("2d");
    this.us = figure.dataset.units !== "metric";
    this.scale = 1; // pixels a metre
    this.east = 0; this.north = 0; // metres at the middle
    this.drawing = null; // {what, form, kind, corners, at}
    this.picked = -1;
    this.draws = 0;
    this.tools();
    this.listen();
    this.load(true);
  }

  async load(fit) {
    const answer = await fetch(this.figure.dataset.land, { headers: { Accept: "application/json" } });
    if (!answer.ok) return this.say("The drawing could not be loaded. The lists on this page hold the same.");
    const land = await answer.json();
    const x = Float64Array.from(land.stems.x), y = Float64Array.from(land.stems.y);
    this.land = { ...land, x, y };
    this.image = null;
    if (land.background && land.background.url) {
      const image = new Image();
      image.onload = () => { this.image = image; this.paint(); };
      image.src = land.background.url;
    }
    if (fit) this.fit();
    this.listPatches(land.all || []);
    this.underButton.hidden = !land.background;
    // After a drawing the word that it is kept stays.
    if (fit) this.say(`${x.length} plants to treat, ${land.patches.length} patches drawn, ${land.spared.length} kept from harm.`);
    this.paint();
  }

  // --- size and place

  fit() {
    let west = Infinity, east = -Infinity, south = Infinity, north = -Infinity;
    const take = (x, y) => { west = Math.min(west, x); east = Math.max(east, x); south = Math.min(south, y); north = Math.max(north, y); };
    for (const patch of this.land.patches) for (const ring of patch.rings) for (const [x, y] of ring) take(x, y);
    for (let n = 0; n < this.land.x.length; n++) take(this.land.x[n], this.land.y[n]);
    if (west > east) for (const kept of this.land.spared) for (const ring of kept.rings) for (const [x, y] of ring) take(x, y);
    if (west > east) { west = 0; east = 60; south = 0; north = 60; }
    const box = this.canvas.getBoundingClientRect();
    this.east = (west + east) / 2; this.north = (south + north) / 2;
    this.scale = 0.9 * Math.min(box.width / Math.max(east - west, 10), box.height / Math.max(north - south, 10));
  }

  size() {
    const box = this.canvas.getBoundingClientRect(), dpr = window.devicePixelRatio || 1;
    const width = Math.round(box.width * dpr), height = Math.round(box.height * dpr);
    if (this.canvas.width !== width || this.canvas.height !== height) { this.canvas.width = width; this.canvas.height = height; }
    this.width = box.width; this.height = box.height;
    this.pen.setTransform(dpr, 0, 0, dpr, 0, 0);
  }

  px(x) { return (x - this.east) * this.scale + this.width / 2; }
  py(y) { return this.height / 2 - (y - this.north) * this.scale; }
  mx(px) { return (px - this.width / 2) / this.scale + this.east; }
  my(py) { return (this.height / 2 - py) / this.scale + this.north; }

  zoom(factor, px = this.width / 2, py = this.height / 2) {
    const x = this.mx(px), y = this.my(py);
    this.scale = Math.min(2000, Math.max(0.001, this.scale * factor));
    this.east += x - this.mx(px); this.north += y - this.my(py);
    this.paint();
  }

  // --- painting: one path for all symbols of a kind, so that twenty thousand stems move without a stutter

  colours() {
    const style = getComputedStyle(document.documentElement);
    const of = (name) => style.getPropertyValue(name).trim();
    return { ink: of("--ink"), paper: of("--paper"), moss: of("--moss"), bark: of("--bark"), ash: of("--ash"), dye: of("--dye"), page: of("--page") };
  }

  paint() {
    if (this.waiting) return;
    this.waiting = true;
    requestAnimationFrame(() => { this.waiting = false; this.paintNow(); });
  }

  paintNow() {
    if (!this.land) return;
    this.size();
    const pen = this.pen, c = this.colours();
    this.draws += 1;
    pen.clearRect(0, 0, this.width, this.height);
    if (this.image && !this.bare) this.paintImage();
    if (!this.bare && this.land.background && this.land.background.tiles) this.paintTiles();
    this.paintPatches(c);
    this.paintKept(c);
    this.paintStems(c);
    this.paintDrawing(c);
    this.paintScale(c);
  }

  paintImage() {
    const corners = this.land.background.corners.map(([x, y]) => [this.px(x), this.py(y)]);
    const [a, b, , d] = corners; // first: north-west, then north-east, south-east, south-west
    const pen = this.pen, w = this.image.naturalWidth, h = this.image.naturalHeight, dpr = window.devicePixelRatio || 1;
    pen.save();
    pen.transform((b[0] - a[0]) / w, (b[1] - a[1]) / w, (d[0] - a[0]) / h, (d[1] - a[1]) / h, a[0], a[1]);
    pen.drawImage(this.image, 0, 0);
    pen.restore();
    pen.setTransform(dpr, 0, 0, dpr, 0, 0);
  }

  // Tiles of the usual web grid (Mercator on a sphere), each laid by its own four sides.
  paintTiles() {
    const { tiles, lat, lon, east, north } = this.land.background;
    const perPixel = 156543.034 * Math.cos((lat * Math.PI) / 180); // metres a pixel at level 0, tiles of 256
    const z = Math.max(0, Math.min(19, Math.round(Math.log2(perPixel * this.scale)))), n = 2 ** z;
    const column = (px) => ((lon + this.mx(px) / east + 180) / 360) * n;
    const row = (py) => { const a = ((lat + this.my(py) / north) * Math.PI) / 180; return ((1 - Math.asinh(Math.tan(a)) / Math.PI) / 2) * n; };
    const left = (c) => this.px(((c / n) * 360 - 180 - lon) * east);
    const top = (r) => this.py(((Math.atan(Math.sinh(Math.PI * (1 - (2 * r) / n))) * 180) / Math.PI - lat) * north);
    const [c0, c1, r0, r1] = [column(0), column(this.width), row(0), row(this.height)].map(Math.floor);
    if ((c1 - c0 + 1) * (r1 - r0 + 1) > 80) return;
    for (let c = c0; c <= c1; c++) for (let r = Math.max(0, r0); r <= Math.min(n - 1, r1); r++) {
      const image = this.tile(tiles.replace("{z}", z).replace("{x}", ((c % n) + n) % n).replace("{y}", r));
      if (image.complete && image.naturalWidth) this.pen.drawImage(image, left(c), top(r), left(c + 1) - left(c), top(r + 1) - top(r));
    }
  }

  tile(address) {
    this.tiles ||= new Map();
    if (!this.tiles.has(address)) {
      if (this.tiles.size > 400) this.tiles.clear();
      const image = new Image();
      image.onload = () => this.paint();
      image.src = address;
      this.tiles.set(address, image);
    }
    return this.tiles.get(address);
  }

  ringPath(rings, close) {
    const path = new Path2D();
    for (const ring of rings) {
      ring.forEach(([x, y], n) => (n ? path.lineTo(this.px(x), this.py(y)) : path.moveTo(this.px(x), this.py(y))));
      if (close) path.closePath();
    }
    return path;
  }

  paintPatches(c) {
    const pen = this.pen;
    for (const patch of this.land.patches) {
      const path = this.ringPath(patch.rings, true);
      this.halo(path, c, c.bark, 2);
      const [x, y] = patch.rings[0][0];
      this.words(patch.name, this.px(x) + 4, this.py(y) - 6, c, true);
    }
    pen.setLineDash([]);
  }

  halo(path, c, colour, width) {
    const pen = this.pen;
    pen.lineWidth = width + 3; pen.strokeStyle = c.paper; pen.stroke(path);
    pen.lineWidth = width; pen.strokeStyle = colour; pen.stroke(path);
  }

  words(text, x, y, c, bold = false) {
    const pen = this.pen;
    pen.font = `${bold ? "bold " : ""}16px "Atkinson Hyperlegible", system-ui, sans-serif`;
    pen.lineWidth = 4; pen.strokeStyle = c.paper; pen.strokeText(text, x, y);
    pen.fillStyle = c.ink; pen.fillText(text, x, y);
  }

  paintKept(c) {
    const squares = new Path2D(), lines = new Path2D(), size = this.symbol();
    for (const kept of this.land.spared) {
      if (kept.form === "point") {
        const [x, y] = kept.rings[0][0];
        squares.rect(this.px(x) - size / 2, this.py(y) - size / 2, size, size);
      } else lines.addPath(this.ringPath(kept.rings, kept.form === "polygon"));
    }
    this.pen.setLineDash([8, 5]);
    this.halo(lines, c, c.moss, 2.5);
    this.pen.setLineDash([]);
    this.pen.fillStyle = c.paper; this.pen.fill(squares);
    this.pen.lineWidth = 2.5; this.pen.strokeStyle = c.moss; this.pen.stroke(squares);
  }

  symbol() { return Math.min(20, Math.max(3, this.scale * 1.2)); }

  paintStems(c) {
    const { x, y } = this.land, state = this.land.stems.state, size = this.symbol(), dots = size < SMALL, r = size / 2;
    const pen = this.pen, open = new Path2D(), drawn = dots ? {} : this.sprites(size, c), dpr = window.devicePixelRatio || 1;
    for (let n = 0; n < x.length; n++) {
      const px = this.px(x[n]), py = this.py(y[n]);
      if (px < -r || py < -r || px > this.width + r || py > this.height + r) continue;
      if (dots) open.rect(px - 1.5, py - 1.5, 3, 3);
      else {
        const sprite = drawn[state[n]] || drawn.standing, half = sprite.width / dpr / 2;
        pen.drawImage(sprite, Math.round((px - half) * dpr) / dpr, Math.round((py - half) * dpr) / dpr, 2 * half, 2 * half);
      }
    }
    if (dots) { pen.fillStyle = c.ink; pen.fill(open); }
    if (this.picked >= 0) {
      const ring = new Path2D();
      ring.arc(this.px(x[this.picked]), this.py(y[this.picked]), r + 6, 0, 2 * Math.PI);
      this.halo(ring, c, c.ink, 3);
    }
  }

  // A symbol for each state, drawn once for its size: stroking thousands of circles takes several times as long.
  sprites(size, c) {
    const dpr = window.devicePixelRatio || 1, wide = Math.round(size * 2) / 2, key = `${wide} ${dpr} ${c.ink} ${c.paper}`;
    if (this.drawnSprites?.key === key) return this.drawnSprites.of;
    const of = {};
    for (const state of ["standing", "cut", "dead"]) {
      const canvas = document.createElement("canvas"), r = wide / 2, m = r + 3;
      canvas.width = canvas.height = Math.ceil(2 * m * dpr);
      const pen = canvas.getContext("2d");
      pen.scale(dpr, dpr); pen.translate(canvas.width / dpr / 2, canvas.height / dpr / 2);
      const path = new Path2D();
      if (state === "dead") { path.moveTo(-r, -r); path.lineTo(r, r); path.moveTo(r, -r); path.lineTo(-r, r); }
      else path.arc(0, 0, r, 0, 2 * Math.PI);
      pen.lineWidth = 6; pen.strokeStyle = c.paper; pen.stroke(path);
      if (state !== "dead") { pen.fillStyle = c.paper; pen.fill(path); }
      pen.lineWidth = state === "dead" ? 3 : 2; pen.strokeStyle = c.ink; pen.stroke(path);
      if (state === "cut") { pen.beginPath(); pen.arc(0, 0, r, -Math.PI / 2, Math.PI / 2); pen.fillStyle = c.ink; pen.fill(); }
      of[state] = canvas;
    }
    this.drawnSprites = { key, of };
    return of;
  }

  paintDrawing(c) {
    const now = this.drawing;
    if (!now) return;
    const corners = now.corners.map(([x, y]) => [this.px(x), this.py(y)]);
    const path = new Path2D();
    corners.forEach(([x, y], n) => (n ? path.lineTo(x, y) : path.moveTo(x, y)));
    const [ax, ay] = [this.px(now.at[0]), this.py(now.at[1])];
    if (corners.length) path.lineTo(ax, ay);
    this.pen.setLineDash([6, 4]); this.halo(path, c, c.ink, 2); this.pen.setLineDash([]);
    const cross = new Path2D();
    cross.moveTo(ax - 12, ay); cross.lineTo(ax + 12, ay); cross.moveTo(ax, ay - 12); cross.lineTo(ax, ay + 12);
    for (const [x, y] of corners) cross.rect(x - 4, y - 4, 8, 8);
    this.halo(cross, c, c.ink, 2);
  }

  paintScale(c) {
    const steps = this.us ? [5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000] : [2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000];
    const one = this.us ? FT : 1;
    const long = steps.filter((s) => s * one * this.scale <= 200).pop() || steps[0];
    const width = long * one * this.scale, y = this.height - 16, pen = this.pen;
    pen.fillStyle = c.ink; pen.fillRect(16, y, width, 4);
    const paces = Math.round((long * one) / FT / PACE_FT);
    this.words(`${long} ${this.us ? "ft" : "m"}, ${paces} paces`, 16, y - 6, c);
    this.words("N", this.width - 28, 24, c, true);
    pen.strokeStyle = c.ink; pen.lineWidth = 2; pen.beginPath();
    pen.moveTo(this.width - 22, 52); pen.lineTo(this.width - 22, 30); pen.moveTo(this.width - 27, 37); pen.lineTo(this.width - 22, 30); pen.lineTo(this.width - 17, 37);
    pen.stroke();
  }

  // --- tools

  tools() {
    const bar = document.createElement("div");
    bar.className = "tools";
    const add = (words, act, name) => {
      const button = document.createElement("button");
      button.type = "button"; button.textContent = words; button.dataset.tool = name || "";
      button.addEventListener("click", act);
      bar.append(button);
      return button;
    };
    add("+", () => this.zoom(1.5)).setAttribute("aria-label", "Larger");
    add("−", () => this.zoom(1 / 1.5)).setAttribute("aria-label", "Smaller");
    add("All of it", () => { this.fit(); this.paint(); });
    this.underButton = add("Hide what lies under", () => {
      this.bare = !this.bare;
      this.underButton.textContent = this.bare ? "Show what lies under" : "Hide what lies under";
      this.paint();
    }, "under");
    this.underButton.hidden = true;
    for (const [words, what, form, kind] of [
      ["Draw a patch", "patch", "polygon", ""], ["Plant to treat", "stem", "point", ""], ["Keep: tree", "kept", "point", "tree"],
      ["Keep: well", "kept", "point", "well"], ["Keep: water's edge", "kept", "line", "water"], ["Keep: area", "kept", "polygon", "small plants"],
    ]) add(words, () => this.begin(what, form, kind), what);
    this.which = document.createElement("select");
    const label = document.createElement("label");
    label.className = "which"; label.append("Outline of ", this.which);
    bar.querySelector("[data-tool=patch]").before(label);
    this.finishButton = add("Finish", () => this.finish(), "finish");
    this.stopButton = add("Stop drawing", () => this.end("Stopped; nothing was kept."), "stop");
    bar.append(this.walkForm());
    this.status = document.createElement("p");
    this.status.className = "said"; this.status.setAttribute("role", "status");
    this.refused = document.createElement("div");
    this.refused.setAttribute("role", "alert");
    this.canvas.before(bar);
    this.canvas.after(this.status, this.refused);
    this.showTools();
  }

  // A patch without outline comes first: drawing it is what is missing.
  listPatches(all) {
    this.which.textContent = "";
    const option = (id, words) => { const one = document.createElement("option"); one.value = id; one.textContent = words; this.which.append(one); };
    for (const patch of all) if (!patch.drawn) option(patch.id, patch.name);
    option("", "a new patch");
    for (const patch of all) if (patch.drawn) option(patch.id, `${patch.name}, drawn again`);
  }

  walkForm() {
    const form = document.createElement("form");
    const set = document.createElement("fieldset");
    const legend = document.createElement("legend");
    legend.textContent = "Next corner by bearing and paces";
    set.append(legend);
    const field = (words, value) => {
      const label = document.createElement("label"), input = document.createElement("input");
      input.type = "text"; input.inputMode = "decimal"; input.value = value;
      label.append(words, document.createElement("br"), input);
      set.append(label);
      return input;
    };
    this.bearing = field("Degrees from north", "");
    this.paces = field("Paces", "");
    this.pace = field("Feet a pace", String(PACE_FT));
    const button = document.createElement("button");
    button.textContent = "Add this corner";
    set.append(button);
    form.append(set);
    form.addEventListener("submit", (event) => { event.preventDefault(); this.walk(); });
    this.walkSet = set;
    return form;
  }

  showTools() {
    const on = Boolean(this.drawing);
    this.finishButton.hidden = !on || this.drawing.form === "point";
    this.stopButton.hidden = !on;
    this.walkSet.hidden = !on;
  }

  say(text) { this.status.textContent = text; }

  begin(what, form, kind) {
    this.refused.textContent = ""; this.refused.className = "";
    this.drawing = { what, form, kind, corners: [], at: [this.east, this.north] };
    this.showTools();
    this.say("Click a place, or move the cross with the arrow keys and press Enter. Backspace takes the last corner back; Escape stops.");
    this.canvas.focus();
    this.paint();
  }

  end(words) { this.drawing = null; this.showTools(); this.say(words); this.paint(); }

  corner(x, y) {
    const now = this.drawing;
    now.corners.push([round2(x), round2(y)]);
    now.at = [x, y];
    if (now.form === "point") return this.finish();
    this.measure();
    this.paint();
  }

  measure() {
    const { corners, form } = this.drawing;
    let long = 0;
    for (let n = 1; n < corners.length; n++) long += Math.hypot(corners[n][0] - corners[n - 1][0], corners[n][1] - corners[n - 1][1]);
    const words = [`${corners.length} corners`, this.us ? `${Math.round(long / FT)} ft so far` : `${Math.round(long)} m so far`];
    if (form === "polygon" && corners.length > 2) {
      words.push(this.area(ringArea(corners)));
      const gap = Math.hypot(corners[0][0] - corners.at(-1)[0], corners[0][1] - corners.at(-1)[1]);
      words.push(this.us ? `${Math.round(gap / FT)} ft from the first corner` : `${Math.round(gap)} m from the first corner`);
    }
    this.say(words.join("; ") + ".");
  }

  area(m2) { return this.us ? `${(m2 / 4046.8564224).toPrecision(2)} acres` : `${Math.round(m2)} m2`; }

  walk() {
    const bearing = Number(this.bearing.value), paces = Number(this.paces.value), pace = Number(this.pace.value);
    if (!this.bearing.value.trim() || !this.paces.value.trim() || ![bearing, paces, pace].every(Number.isFinite) || paces <= 0 || pace <= 0)
      return this.refuse("Not understood. Write degrees from north, for example 90, and paces, for example 40.");
    const [x, y] = this.drawing.corners.at(-1) || this.drawing.at;
    if (!this.drawing.corners.length) this.drawing.corners.push([round2(x), round2(y)]);
    const far = paces * pace * FT, angle = (bearing * Math.PI) / 180;
    this.corner(x + far * Math.sin(angle), y + far * Math.cos(angle));
    this.bearing.value = ""; this.paces.value = ""; this.bearing.focus();
  }

  refuse(sentence) {
    this.refused.className = "refused";
    this.refused.textContent = sentence;
  }

  async finish() {
    const now = this.drawing;
    const least = { point: 1, line: 2, polygon: 3 }[now.form];
    let corners = now.corners;
    const last = corners.at(-1);
    // Walked round to where it began: the last corner is the first again, not one more.
    if (now.form === "polygon" && corners.length > 3 && Math.hypot(last[0] - corners[0][0], last[1] - corners[0][1]) < 3 * FT) corners = corners.slice(0, -1);
    if (corners.length < least) return this.refuse(`It takes at least ${least} corners.`);
    const asked = { command: crypto.randomUUID(), what: now.what, form: now.form, kind: now.kind, rings: [corners] };
    if (now.what === "patch" && this.which.value) asked.id = this.which.value;
    const token = document.querySelector("meta[name=csrf]").content;
    let sentence = "Stemward does not answer. The drawing is still here; try Finish again.";
    try {
      const answer = await fetch(this.figure.dataset.post, { method: "POST", headers: { "X-CSRFToken": token, "Content-Type": "application/json" }, body: JSON.stringify(asked) });
      const said = await answer.json();
      if (answer.ok) {
        this.refused.textContent = ""; this.refused.className = "";
        this.end(now.form === "polygon" ? `Kept: ${this.area(ringArea(corners))}.` : "Kept.");
        this.figure.dispatchEvent(new CustomEvent("drawn", { bubbles: true }));
        return this.load(false);
      }
      sentence = said.sentence;
    } catch { /* the sentence above says it */ }
    if (now.form === "point") now.corners = [];
    this.refuse(sentence);
  }

  // --- mouse and keys

  listen() {
    const canvas = this.canvas;
    let from = null, moved = false;
    canvas.addEventListener("pointerdown", (event) => { from = [event.offsetX, event.offsetY]; moved = false; canvas.setPointerCapture(event.pointerId); });
    canvas.addEventListener("pointermove", (event) => {
      if (this.drawing) { this.drawing.at = [this.mx(event.offsetX), this.my(event.offsetY)]; this.paint(); }
      if (!from) return;
      const dx = event.offsetX - from[0], dy = event.offsetY - from[1];
      if (!moved && Math.hypot(dx, dy) < 4) return;
      moved = true;
      this.east -= dx / this.scale; this.north += dy / this.scale;
      from = [event.offsetX, event.offsetY];
      this.paint();
    });
    canvas.addEventListener("pointerup", (event) => {
      if (from && !moved) this.click(event.offsetX, event.offsetY);
      from = null;
    });
    canvas.addEventListener("wheel", (event) => {
      if (document.activeElement !== canvas) return; // the page scrolls until the drawing is chosen
      event.preventDefault();
      this.zoom(event.deltaY < 0 ? 1.2 : 1 / 1.2, event.offsetX, event.offsetY);
    }, { passive: false });
    canvas.addEventListener("keydown", (event) => this.key(event));
    new ResizeObserver(() => this.paint()).observe(canvas);
  }

  click(px, py) {
    if (this.drawing) return this.corner(this.mx(px), this.my(py));
    this.pick(px, py);
  }

  pick(px, py) {
    const { x, y, stems } = this.land;
    let best = -1, near = HIT;
    for (let n = 0; n < x.length; n++) {
      const far = Math.hypot(this.px(x[n]) - px, this.py(y[n]) - py);
      if (far < near) { near = far; best = n; }
    }
    this.picked = best;
    const size = best < 0 ? "" : this.us ? `${(stems.cm[best] / 2.54).toFixed(1)} in` : `${stems.cm[best].toFixed(1)} cm`;
    this.say(best < 0 ? "No plant within reach of that place." : `${stems.id[best]}: ${stems.species[best]}, ${size} across, ${stems.state[best]}.`);
    this.paint();
  }

  key(event) {
    const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
    const step = steps[event.key], now = this.drawing;
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (step) {
      event.preventDefault();
      if (now) {
        const far = (event.shiftKey ? 10 : 1) * (this.us ? FT : 0.25);
        now.at = [now.at[0] + step[0] * far, now.at[1] + step[1] * far];
        this.follow(now.at);
        this.say(`Cross at ${this.us ? Math.round(now.at[0] / FT) : now.at[0].toFixed(2)} east, ${this.us ? Math.round(now.at[1] / FT) : now.at[1].toFixed(2)} north (${this.us ? "ft" : "m"}).`);
      } else { this.east += (step[0] * 60) / this.scale; this.north += (step[1] * 60) / this.scale; }
      this.paint();
    } else if (event.key === "+" || event.key === "=") this.zoom(1.5);
    else if (event.key === "-") this.zoom(1 / 1.5);
    else if (now && event.key === "Enter") { event.preventDefault(); this.corner(...now.at); }
    else if (now && event.key.toLowerCase() === "c") this.finish();
    else if (now && event.key === "Backspace") { event.preventDefault(); now.corners.pop(); this.measure(); this.paint(); }
    else if (now && event.key === "Escape") this.end("Stopped; nothing was kept.");
  }

  follow([x, y]) {
    const px = this.px(x), py = this.py(y);
    if (px < 20 || px > this.width - 20) this.east = x;
    if (py < 20 || py > this.height - 20) this.north = y;
  }
}

function round2(value) { return Math.round(value * 100) / 100; }

function ringArea(ring) {
  let twice = 0;
  ring.forEach(([x, y], n) => { const [a, b] = ring[(n + 1) % ring.length]; twice += x * b - a * y; });
  return Math.abs(twice) / 2;
}

for (const figure of document.querySelectorAll(".land[data-land]")) figure.drawingOfLand = new Land(figure);
