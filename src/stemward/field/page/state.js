// What the phone knows: plan, settings, rows. Everything shown follows from these.

import * as store from "./store.js";
import { cutUntreated, inForce, marks, moment, offsetM } from "./rules.js";

export const state = { plan: null, settings: {}, rows: [], word: "", offS: null, trouble: "", here: null };

const FIRST = { theme: "sun", sheet: "", rhythm: "one", who: "", clock: true, lot: 0, flag: "", device: "", units: "us", asked: false };

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
