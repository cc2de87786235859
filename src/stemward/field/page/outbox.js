// Rows on their way to the notebook. Nothing leaves but on the notebook's answer for that very row.

const LOT = 25;
const BETWEEN_MS = 1500;
const LEAST_MS = 2000;
const MOST_MS = 120000;
const SLOW_MS = 30000;

/** What a row becomes by an answer; a row that was not answered, or has to wait, stays as it is. */
export function settled(kept, answers) {
  const by = new Map(answers.map((one) => [one.id, one]));
  return kept
    .filter((one) => ["kept", "again", "refused"].includes((by.get(one.row.id) || {}).state))
    .map((one) => {
      const answer = by.get(one.row.id);
      return { ...one, state: answer.state === "refused" ? "refused" : "sent", why: answer.why || "" };
    });
}

/** How long to wait after so many failures in a row, with a random part so that phones do not ask together. */
export const pauseMs = (failures, random = Math.random()) =>
  Math.min(MOST_MS, LEAST_MS * 2 ** Math.min(failures, 10)) * (0.5 + random / 2);

const pause = (ms) => new Promise((done) => setTimeout(done, ms));

/** Send waiting rows until none is left or something fails.
 * on: {rows(): kept rows, settle(kept), word(), device(), photos(), dropPhoto(digest), told(offS)}.
 * Answers {sent, failed: ""|"no network"|"busy"|"ended"}. */
export async function send(on, fetch = window.fetch.bind(window)) {
  let sent = 0;
  for (;;) {
    const some = on.rows().filter((one) => one.state === "waiting").slice(0, LOT);
    if (!some.length) break;
    const answer = await post(fetch, "rows", on, JSON.stringify({
      form: "stemward phone rows", device: on.device(), sent_at: new Date().toISOString(), rows: some.map((one) => one.row),
    }));
    if (answer.failed) return { sent, failed: answer.failed };
    const done = settled(some, answer.said.answers || []);
    on.told(answer.said.off_s);
    await on.settle(done);
    sent += done.length;
    if (!done.length) break;
    // Many phones come home at once: a pause of a random length lets the others in.
    if (on.rows().some((one) => one.state === "waiting")) await pause(BETWEEN_MS * (0.3 + Math.random()));
  }
  for (const [digest, blob] of await on.photos()) {
    const answer = await post(fetch, "photo", on, blob);
    if (answer.failed) return { sent, failed: answer.failed };
    if (answer.said.digest === digest) await on.dropPhoto(digest);
  }
  return { sent, failed: "" };
}

async function post(fetch, to, on, body) {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), SLOW_MS);
  try {
    const answer = await fetch(to, {
      method: "POST", body, signal: stop.signal, cache: "no-store",
      headers: { "X-Stemward-Phone": on.word(), "Content-Type": typeof body === "string" ? "application/json" : "image/jpeg" },
    });
    if (answer.status === 403) return { failed: "ended" };
    if (!answer.ok) return { failed: "busy" };
    return { said: await answer.json(), failed: "" };
  } catch {
    return { failed: "no network" };
  } finally {
    clearTimeout(timer);
  }
}
