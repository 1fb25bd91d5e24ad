// @ts-check

// Keeps the screen on while a run is in sight.

/**
 * @param {(on: boolean) => void} onChange
 */
export function createWakeLock(onChange) {
  let wished = false;
  /** @type {WakeLockSentinel | undefined} */
  let lock;
  let asking = false;
  async function ask() {
    if (asking || lock || !wished || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    asking = true;
    try {
      lock = await navigator.wakeLock.request('screen');
      lock.addEventListener('release', () => {
        lock = undefined;
        onChange(false);
      });
      onChange(true);
      if (!wished) void lock.release();
    } catch {
      // The battery is low or the browser does not want to: the run goes on, the screen may go dark.
    } finally {
      asking = false;
    }
  }
  // The lock is lost whenever the page is out of sight.
  document.addEventListener('visibilitychange', () => void ask());
  return {
    /** @param {boolean} on */
    wish(on) {
      wished = on;
      if (on) void ask();
      else void lock?.release();
    },
  };
}
