// What the phone knows: plan, settings, rows. Everything shown follows from these.

import * as store from "./store.js";
import { cutUntreated, inForce, marks, moment, offsetM, onward } from "./rules.js";

export const state = { plan: null, settings: {}, rows: [], word: "", offS: null, trouble: "", here: null };

const FIRST = { theme: "sun", sheet: "", rhythm: "one", who: "", clock: true, lot: 0, flag: "", walk: "", order: null, device: "", units: "us", asked: false };

/** Read everything at the start. */
export async function load() {
  state.plan = (await store.get("plan")) || null;
  state.settings = { ...FIRST, ...((await store.get("settings")) || {}) };
  state.word = (await store.get("word")) || "";
  state.rows = await store.all();
  if (!state.settings.device) await set({ device: `phone ${crypto.randomUUID().slice(0, 4)}` });
}

export async function set(some) {
  state.settings = { ...state.settings, ...some };
  await store.put("settings", state.settings);
}

export async function keepWord(word) {
  state.word = word;
  await store.put("word", word);
}

/** Keep a plan that was got. Throws with a sentence for what is none. */
export async function keepPlan(plan) {
  if (!plan || plan.form !== "stemward phone plan" || plan.schema !== 1) throw new Error("This is no plan for a phone.");
  state.plan = plan;
  await store.put("plan", plan);
  if (!(plan.walks || []).some((one) => one.id === state.settings.walk)) await set({ walk: "", order: null });
  if (!plan.sheets.some((sheet) => sheet.id === state.settings.sheet)) {
    await set({ sheet: plan.sheets.length ? plan.sheets[0].id : "", who: state.settings.who || plan.people[0] || "" });
  }
}

const two = (n) => String(n).padStart(2, "0");

/** A moment as rows have it: local time and minutes from UTC. */
export function written(ms) {
  const d = new Date(ms);
  return {
    at: `${d.getFullYear()}-${two(d.getMonth() + 1)}-${two(d.getDate())}T${two(d.getHours())}:${two(d.getMinutes())}:${two(d.getSeconds())}`,
    offset: -d.getTimezoneOffset(),
  };
}

/** Write a row down; it is on the phone's disk when this is done. */
export async function add(kind, body, corrects = "") {
  const row = { id: crypto.randomUUID(), kind, ...written(Date.now()), by: state.settings.who || "someone", device: state.settings.device, body };
  if (corrects) row.corrects = corrects;
  const n = await store.add(row);
  state.rows.push({ n, row, state: "waiting", why: "" });
  return row;
}

export async function settle(kept) {
  await store.settle(kept);
  const by = new Map(kept.map((one) => [one.n, one]));
  state.rows = state.rows.map((one) => by.get(one.n) || one);
}

export const sheet = () => state.plan && state.plan.sheets.find((one) => one.id === state.settings.sheet);

const ours = () => state.rows.filter((one) => one.state !== "refused").map((one) => one.row);

/** Marks of every stem, those of rows that were refused left out. */
export const known = () => marks(ours());

/** Rows of a sheet as objects, with what is known of each. */
export function stems(of = sheet(), found = known()) {
  if (!of) return [];
  return of.rows.map(([id, n, count, size, dose, x, y]) => {
    const mark = found.get(id) || { cut: 0, treated: 0, what: "" };
    return { id, n, count, size, dose, x, y, ...mark, done: over(of, mark, count) };
  });
}

/** The walk that is followed, null where one goes by number. */
export const walk = () => (state.plan && (state.plan.walks || []).find((one) => one.id === state.settings.walk)) || null;

/** Its stems in the order they are walked, of every sheet: as in `stems`, with sheet, lot (how many are cut before they
 * are treated) and refill (true where one goes back to the jug first). */
export function walked(found = known()) {
  const own = walk();
  if (!own) return [];
  const by = new Map();
  for (const one of state.plan.sheets) for (const stem of stems(one, found)) by.set(`${one.id} ${stem.id}`, { ...stem, sheet: one.id });
  const made = [];
  let refill = false;
  for (const stop of own.stops) {
    if (stop === "refill") refill = true;
    else if (by.has(`${stop[0]} ${stop[1]}`)) {
      made.push({ ...by.get(`${stop[0]} ${stop[1]}`), refill });
      refill = false;
    }
  }
  for (const [first, count] of own.lots) made.slice(first, first + count).forEach((stem) => { stem.lot = count; });
  const order = state.settings.order;
  if (!order || order.walk !== own.id) return made;
  // Changed on the way: lots and refills of the old order hold no more.
  const place = new Map(order.ids.map((id, n) => [id, n]));
  const free = made.map((stem) => ({ ...stem, refill: false, lot: 0 }));
  return [...free.filter((stem) => !place.has(`${stem.sheet} ${stem.id}`)), ...free.filter((stem) => place.has(`${stem.sheet} ${stem.id}`))
    .sort((a, b) => place.get(`${a.sheet} ${a.id}`) - place.get(`${b.sheet} ${b.id}`))];
}

/** Put what is left of the walk into an order from here on. Answers false where nobody knows where here is. */
export async function fromHere(from) {
  const own = walk();
  if (!own || !from) return false;
  const left = walked().filter((stem) => !stem.done && !(stem.cut > stem.treated) && stem.x !== null);
  const order = onward(left.map((stem) => [stem.x, stem.y]), from);
  await set({ order: { walk: own.id, ids: order.map((n) => `${left[n].sheet} ${left[n].id}`) } });
  return true;
}

/** Follow the walk into the next sheet, once nothing waits in this one. */
export async function follow() {
  if (!walk() || waiting().length) return;
  const next = walked().find((stem) => !stem.done && !(stem.cut > stem.treated));
  if (next && next.sheet !== state.settings.sheet) await set({ sheet: next.sheet });
}

/** The stems that are gone through now: those of the walk in this sheet, else all of it. */
export const inOrder = () => (walk() ? walked().filter((stem) => stem.sheet === state.settings.sheet) : stems());

function over(of, mark, count) {
  if (mark.what === "missed" || mark.what === "not found") return true;
  return (of.treat ? mark.treated : mark.cut) >= count;
}

/** Cut and not treated, the oldest first: {id, n, cutMs, count}. */
export function waiting(of = sheet()) {
  if (!of || !of.treat || !of.cut) return [];
  const found = known();
  const own = new Map(of.rows.map((row) => [row[0], row[1]]));
  const cut = new Map();
  for (const row of inForce(ours())) {
    if (row.kind !== "marked" || row.body.what !== "cut") continue;
    for (const id of Object.keys(row.body.rows)) if (!cut.has(id)) cut.set(id, moment(row));
  }
  return cutUntreated(found)
    .filter((id) => own.has(id))
    .map((id) => ({ id, n: own.get(id), cutMs: cut.get(id), count: found.get(id).cut - found.get(id).treated }))
    .sort((a, b) => a.cutMs - b.cutMs || a.n - b.n);
}

/** This phone's last row that still holds and can be taken back. */
export const last = () => inForce(ours()).filter((row) => row.kind === "marked" || row.kind === "noted").pop();

export const unsent = () => state.rows.filter((one) => one.state === "waiting");
export const refused = () => state.rows.filter((one) => one.state === "refused");

/** Where the phone is on the tract, metres east and north; null where nobody knows. */
export function here() {
  const { plan, here: at } = state;
  if (!plan || !plan.origin || !at || at.accuracy > 50 || Date.now() - at.ms > 60000) return null;
  return offsetM(at.latitude, at.longitude, plan.origin);
}
