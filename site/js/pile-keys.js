// The keys of the list of photographs: nowhere else does a letter do anything.

/** @param {Record<string, () => unknown>} keys by their names @param {(error: unknown) => void} failed */
export function onKeys(keys, failed) {
  document.addEventListener("keydown", (event) => {
    const list = event.target instanceof Element && event.target.closest('[data-region="pile"]');
    if (!list || event.ctrlKey || event.altKey || event.metaKey) return;
    const does = keys[event.key.length === 1 ? event.key.toLowerCase() : event.key];
    if (!does) return;
    event.preventDefault();
    Promise.resolve(does()).catch(failed);
  });
}
