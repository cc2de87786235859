// The core's rules that the phone needs, held against cases worked out by the core (vectors.json).
// Plain values in and out; nothing here reads a clock or a store.

/** Seconds left from cut to treatment; below 0 once it is over. */
export const clockLeft = (limitS, waitedS) => limitS - Math.max(waitedS, 0);

/** "first half", "second half" or "over". */
export function clockPart(limitS, waitedS) {
  const left = clockLeft(limitS, waitedS);
  if (left < 0) return "over";
  return left <= limitS / 2 ? "second half" : "first half";
}

/** Whole minutes left as they are shown, cut off. */
export const minutesShown = (leftS) => Math.max(0, Math.floor(leftS / 60));

/** The longest any stump of a lot waits, seconds. */
export const waitS = (stumps, { walk_s, clear_s, cut_s, treat_s }) =>
  clear_s + walk_s + Math.max((stumps - 1) * cut_s + treat_s, stumps * treat_s);

/** The most stumps of which none waits longer than the limit. */
export function lotSize(limitS, { walk_s, clear_s, cut_s, treat_s }) {
  const left = limitS - walk_s - clear_s;
  if (left < treat_s) return 0;
  const byCutting = cut_s <= 0 ? Infinity : (left - treat_s) / cut_s + 1;
  const byTreating = treat_s <= 0 ? Infinity : left / treat_s;
  return Math.min(Math.floor(Math.min(byCutting, byTreating, 1e6) + 1e-9), 1000000);
}

const EIGHT = ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];
const RADIUS_M = 6371008.8;
const rad = (deg) => (deg * Math.PI) / 180;

export const distanceM = (xM, yM) => Math.hypot(xM, yM);

/** The nearest of eight directions; "here" within a metre. */
export function direction(xM, yM) {
  if (distanceM(xM, yM) < 1) return "here";
  const turn = ((Math.atan2(xM, yM) * 180) / Math.PI + 360) % 360;
  return EIGHT[Math.floor(turn / 45 + 0.5) % 8];
}

/** East and north of the origin, metres. */
export const offsetM = (latitude, longitude, origin) => [
  rad(longitude - origin[1]) * Math.cos(rad(origin[0])) * RADIUS_M,
  rad(latitude - origin[0]) * RADIUS_M,
];

/** Numbers of places in an order from here on: always the nearest next, then pieces turned about while it helps. */
export function onward(places, here) {
  const apart = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const left = places.map((_, n) => n);
  const order = [];
  let at = here;
  while (left.length) {
    const best = left.reduce((one, n) => (apart(places[n], at) < apart(places[one], at) ? n : one));
    left.splice(left.indexOf(best), 1);
    order.push(best);
    at = places[best];
  }
  for (let better = true; better;) {
    better = false;
    for (let first = 0; first < order.length - 1; first++) {
      const before = first ? places[order[first - 1]] : here;
      for (let last = first + 1; last < order.length; last++) {
        const [start, end] = [places[order[first]], places[order[last]]];
        let [was, next] = [apart(before, start), apart(before, end)];
        if (last + 1 < order.length) {
          const after = places[order[last + 1]];
          [was, next] = [was + apart(end, after), next + apart(start, after)];
        }
        if (next < was - 1e-6) {
          order.splice(first, last + 1 - first, ...order.slice(first, last + 1).reverse());
          better = true;
        }
      }
    }
  }
  return order;
}

/** The moment of a row, milliseconds since 1970. */
export const moment = (row) => {
  const [day, time = "00:00:00"] = row.at.split("T");
  return Date.parse(`${day}T${time.length === 5 ? `${time}:00` : time}Z`) - row.offset * 60000;
};
const written = (row) => row.received || row.at;
const byWriting = (a, b) => compare(written(a), written(b)) || compare(a.id, b.id);
const compare = (a, b) => (a < b ? -1 : a > b ? 1 : 0);

/** The rows that hold, in the order of what happened. */
export function inForce(rows) {
  const sorted = [...rows].sort(byWriting);
  const unique = new Map(sorted.map((row) => [row.id, row]));
  const last = new Map();
  for (const row of unique.values()) if (row.corrects && unique.has(row.corrects)) last.set(row.corrects, row.id);
  return [...unique.values()]
    .filter((row) => !last.has(row.id) && !(row.corrects && last.has(row.corrects) && last.get(row.corrects) !== row.id))
    .filter((row) => row.kind !== "taken back")
    .sort((a, b) => moment(a) - moment(b) || byWriting(a, b));
}

/** What is known of each stem: Map of stem to {what, cut, treated, at, row}. */
export function marks(rows) {
  const found = new Map();
  for (const row of inForce(rows)) {
    if (row.kind !== "marked") continue;
    for (const [stem, count] of Object.entries(row.body.rows)) {
      const have = found.get(stem) || { cut: 0, treated: 0 };
      const what = row.body.what;
      found.set(stem, {
        ...have, what, at: moment(row), row: row.id,
        cut: have.cut + (what === "cut" ? count : 0),
        treated: have.treated + (what === "treated" ? count : 0),
      });
    }
  }
  return found;
}

/** Stems that were cut and not treated since. */
export const cutUntreated = (found) => [...found].filter(([, mark]) => mark.cut > mark.treated).map(([stem]) => stem);
