// @ts-check

// Files dropped anywhere on the page, and those this app was opened with, are read as a backup.

/** @param {(file: Blob) => Promise<void>} read */
export function acceptFiles(read) {
  const holdsFile = (/** @type {DragEvent} */ event) => event.dataTransfer?.types.includes('Files') ?? false;
  addEventListener('dragover', (event) => {
    if (!holdsFile(event)) return;
    event.preventDefault();
    document.body.classList.add('dropping');
  });
  addEventListener('dragleave', (event) => {
    if (!event.relatedTarget) document.body.classList.remove('dropping');
  });
  addEventListener('drop', (event) => {
    document.body.classList.remove('dropping');
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    void read(file);
  });
  // Where the system offers that.
  /** @typedef {{ files?: { getFile: () => Promise<File> }[] }} Launched */
  const queue = /** @type {{ setConsumer: (take: (launched: Launched) => void) => void } | undefined} */ (
    Reflect.get(globalThis, 'launchQueue')
  );
  queue?.setConsumer(async ({ files }) => {
    const handle = files?.[0];
    if (handle) await read(await handle.getFile());
  });
}
