// The phone's database: the plan, settings, rows with what became of them, photos. A write is done when it is on disk.

const open = new Promise((resolve, reject) => {
  const asked = indexedDB.open("stemward-phone", 1);
  asked.onupgradeneeded = () => {
    const db = asked.result;
    db.createObjectStore("kept");
    db.createObjectStore("photos");
    db.createObjectStore("rows", { keyPath: "n", autoIncrement: true });
  };
  asked.onsuccess = () => resolve(asked.result);
  asked.onerror = () => reject(asked.error);
});

/** Run `act` on a store and wait until the transaction is on disk; what the request of `act` answered. */
async function within(store, mode, act) {
  const db = await open;
  return new Promise((resolve, reject) => {
    const change = db.transaction(store, mode, { durability: "strict" });
    const asked = act(change.objectStore(store));
    change.oncomplete = () => resolve(asked && asked.result);
    change.onerror = () => reject(change.error);
    change.onabort = () => reject(change.error);
  });
}

export const get = (name) => within("kept", "readonly", (store) => store.get(name));
export const put = (name, value) => within("kept", "readwrite", (store) => store.put(value, name));
export const putPhoto = (digest, blob) => within("photos", "readwrite", (store) => store.put(blob, digest));
export const photos = async () => {
  const names = await within("photos", "readonly", (store) => store.getAllKeys());
  return Promise.all(names.map(async (name) => [name, await within("photos", "readonly", (store) => store.get(name))]));
};
export const dropPhoto = (digest) => within("photos", "readwrite", (store) => store.delete(digest));

/** Every row in the order in which it was made: {n, row, state, why}. */
export const all = () => within("rows", "readonly", (store) => store.getAll());

/** Add a row that waits to be sent; its number. */
export const add = (row) => within("rows", "readwrite", (store) => store.add({ row, state: "waiting", why: "" }));

/** Write what became of rows. */
export const settle = (kept) => within("rows", "readwrite", (store) => {
  for (const one of kept) store.put(one);
});
