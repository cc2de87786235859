// Small helpers: elements, buttons that forgive gloves and rain, times in words.

/** An element. attrs: attributes, `on` for a click, booleans set or leave out. */
export function h(tag, attrs = {}, ...inside) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attrs)) {
    if (name === "on") press(made, value);
    else if (value === true) made.setAttribute(name, "");
    else if (value !== false && value !== null && value !== undefined) made.setAttribute(name, value);
  }
  made.append(...inside.flat().filter((one) => one !== null && one !== undefined && one !== false));
  return made;
}

export function svg(tag, attrs = {}, ...inside) {
  const made = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(attrs)) made.setAttribute(name, value);
  made.append(...inside);
  return made;
}

let fingers = 0;
let later = null;
/** Do it now, or when no finger is on the screen: a page drawn anew under a finger would swallow the press. */
export function whenFree(act) {
  if (fingers) later = act;
  else act();
}
for (const over of ["pointerup", "pointercancel"]) addEventListener(over, () => setTimeout(() => { const act = later; later = null; if (act) act(); }));

const LEAST_MS = 80;
const AGAIN_MS = 700;
addEventListener("pointerdown", () => { fingers += 1; }, true);
for (const over of ["pointerup", "pointercancel"]) addEventListener(over, () => { fingers = Math.max(0, fingers - 1); }, true);

/** A press counts when it is let go within the button after 80 ms; a second one within 700 ms is ignored, and so are
 * two fingers at once (rain, a fold of the glove). Keys count at once. */
export function press(button, act) {
  let down = 0;
  let many = false;
  button.addEventListener("pointerdown", (event) => { down = event.timeStamp; many = fingers > 1 || !event.isPrimary; });
  button.addEventListener("click", (event) => {
    const byPointer = event.detail > 0;
    if (byPointer && (many || event.timeStamp - down < LEAST_MS)) return;
    once(button.id || button.textContent, act);
  });
}

const lastAt = new Map();
/** Do it unless the same was done a moment ago. */
export function once(name, act) {
  const now = performance.now();
  if (now - (lastAt.get(name) ?? -AGAIN_MS) < AGAIN_MS) return;
  lastAt.set(name, now);
  act();
}

export const two = (n) => String(n).padStart(2, "0");
/** A time of day: 10:42. */
export const clock = (ms) => { const d = new Date(ms); return `${d.getHours()}:${two(d.getMinutes())}`; };
/** How long ago: "4 min", "2 h", "3 days". */
export function span(ms) {
  const min = Math.max(0, Math.round(ms / 60000));
  if (min < 90) return `${min} min`;
  return min < 2880 ? `${Math.round(min / 60)} h` : `${Math.round(min / 1440)} days`;
}
/** A length in the reader's units: "60 ft", "18 m". */
export const length = (m, units) => (units === "us" ? `${Math.round(m / 0.3048)} ft` : `${Math.round(m)} m`);

/** Tell it to those who hear the page. */
export const say = (words) => { document.getElementById("said").textContent = words; };
