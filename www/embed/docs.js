// @ts-check

// The page about embedding: its snippets name the address they are read at, and can be copied.

const base = new URL('../../', import.meta.url);
document.querySelector('.late')?.remove();

for (const place of document.querySelectorAll('[data-base]')) place.textContent = base.href;
for (const place of document.querySelectorAll('[data-origin]')) place.textContent = base.origin;
// Whoever comes from the share room brings the link along.
const fragment = /^#(f=[\w-]+)$/.exec(location.hash)?.[1];
for (const place of document.querySelectorAll('[data-link]')) place.textContent = `${base.href}#${fragment ?? 'f=…'}`;
for (const place of document.querySelectorAll('[data-fragment]')) place.textContent = fragment ?? 'f=…';

for (const key of document.querySelectorAll('button[data-copy]')) {
  key.addEventListener('click', async () => {
    const snippet = document.getElementById(key.getAttribute('data-copy') ?? '')?.textContent ?? '';
    try {
      await navigator.clipboard.writeText(snippet);
      key.textContent = 'Copied';
    } catch {
      key.textContent = 'Your browser does not let it be copied: select it instead';
    }
  });
}
