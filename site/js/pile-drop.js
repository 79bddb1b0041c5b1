// Files that are dropped anywhere on the page.

/** Take files that are dropped on the page. @param {(files: File[]) => void} take */
export function onDrop(take) {
  document.addEventListener("dragover", (event) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  });
  document.addEventListener("drop", (event) => {
    const dropped = [...(event.dataTransfer?.files ?? [])];
    if (!dropped.length) return;
    event.preventDefault();
    take(dropped);
  });
}
