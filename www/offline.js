// @ts-check

// Registers the service worker and tells the page three things: that it works offline now, that a new version waits,
// and that keeping a version failed. Nothing is taken over until the page asks for it.

/**
 * Why the page will not work offline (or not with the newest version):
 * `unsupported` by this browser or address, `registration` refused, `installation` of a version failed.
 * @typedef {'unsupported' | 'registration' | 'installation'} OfflineFailure
 */

/**
 * @typedef {object} OfflineEvents
 * @property {() => void} [onReady] The first version is kept whole: the page works offline now.
 * @property {() => void} [onUpdate] A new version waits; `takeOver` changes to it.
 * @property {(failure: OfflineFailure) => void} [onFailure] A version could not be kept; what was kept goes on working.
 */

/**
 * Has the texts of a language kept with the rest.
 * @param {string} language
 */
export async function keepLanguage(language) {
  const registration = await navigator.serviceWorker?.ready;
  registration?.active?.postMessage({ type: 'keep-language', language });
}

/** Pages stay open for days: how long to go without asking for a new version, in milliseconds. */
const ASK_AGAIN_AFTER = 60 * 60 * 1000;

/**
 * Makes the page work offline.
 * @param {OfflineEvents} events
 * @returns {{ takeOver: () => void }} `takeOver` changes to the version that waits and loads the page once more.
 */
export function registerOffline({ onReady, onUpdate, onFailure }) {
  const container = navigator.serviceWorker;
  if (!container) {
    // Browsers offer none on plain http and in some private windows.
    onFailure?.('unsupported');
    return { takeOver() {} };
  }

  /** @type {ServiceWorkerRegistration | undefined} */
  let registration;
  let takingOver = false;
  let isReloading = false;
  let hadController = container.controller !== null;

  const reloadOnce = () => {
    if (!isReloading) {
      isReloading = true;
      location.reload();
    }
  };

  container.addEventListener('controllerchange', () => {
    if (takingOver) {
      reloadOnce();
    } else if (hadController) {
      // Another page of ours accepted the update: this one is offered it too, instead of losing what is on screen.
      onUpdate?.();
    }
    hadController = true;
  });

  /** @type {ServiceWorker | undefined} */
  let watched;

  /** @param {ServiceWorker} installing */
  const watch = (installing) => {
    // The same worker is found both at registration and by the event.
    if (installing === watched) return;
    watched = installing;
    const isFirst = !registration?.active;
    let isInstalled = false;
    const look = () => {
      if (installing.state === 'installed') {
        isInstalled = true;
        if (!isFirst) {
          onUpdate?.();
        }
      } else if (installing.state === 'activated') {
        if (isFirst) {
          onReady?.();
        }
        installing.removeEventListener('statechange', look);
      } else if (installing.state === 'redundant' && !isInstalled) {
        onFailure?.('installation');
      }
    };
    installing.addEventListener('statechange', look);
    look();
  };

  const register = async () => {
    try {
      registration = await container.register(new URL('sw.js', document.baseURI), { updateViaCache: 'none' });
    } catch {
      onFailure?.('registration');
      return;
    }
    if (registration.waiting && registration.active) {
      onUpdate?.();
    }
    if (registration.installing) {
      watch(registration.installing);
    }
    registration.addEventListener('updatefound', () => {
      if (registration?.installing) {
        watch(registration.installing);
      }
    });
    let asked = Date.now();
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible' && Date.now() - asked > ASK_AGAIN_AFTER) {
        asked = Date.now();
        // Without a network there is nothing new to find.
        registration?.update().catch(() => {});
      }
    });
  };
  void register();

  return {
    takeOver() {
      takingOver = true;
      if (registration?.waiting) {
        registration.waiting.postMessage({ type: 'take-over' });
      } else {
        // Another page has let the new version in already.
        reloadOnce();
      }
    },
  };
}
