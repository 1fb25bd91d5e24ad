// @ts-check

// How the element looks. As a style sheet made in script it needs nothing of the host page's policy, and nothing of it
// leaves the element. A page themes it by the custom properties below; docs: index.html.

export const style = `
:host { all: initial !important; display: block !important; contain: content; color-scheme: light dark; }
.shared-sheet, .waiting {
  --paper: var(--stillroom-paper, #ffffff); --ink: var(--stillroom-ink, #101b33); --soft: var(--stillroom-ink-soft, #46546c);
  --accent: var(--stillroom-accent, #1b3a86); --on-accent: var(--stillroom-on-accent, #ffffff); --line: var(--stillroom-rule, #cfd9df);
  --warn: var(--stillroom-warning, #8c1239);
  box-sizing: border-box; background: var(--paper); color: var(--ink); padding: 16px; border: 1px solid var(--line);
  border-radius: var(--stillroom-radius, 4px); font: 16px/1.45 var(--stillroom-font, system-ui, -apple-system, "Segoe UI", Roboto, sans-serif);
  font-variant-numeric: tabular-nums lining-nums; text-align: start; overflow-wrap: anywhere;
}
@media (prefers-color-scheme: dark) {
  .shared-sheet, .waiting {
    --paper: var(--stillroom-paper, #121a2b); --ink: var(--stillroom-ink, #eef3f8); --soft: var(--stillroom-ink-soft, #adbacd);
    --accent: var(--stillroom-accent, #a9c2ff); --on-accent: var(--stillroom-on-accent, #0a101d); --line: var(--stillroom-rule, #263350);
    --warn: var(--stillroom-warning, #ff9fb5);
  }
}
*, *::before { box-sizing: border-box; }
[hidden] { display: none !important; }
h1, h2, h3, h4, h5 { font-family: var(--stillroom-heading-font, "DIN Alternate", Bahnschrift, "Roboto Condensed", sans-serif-condensed, system-ui, sans-serif); line-height: 1.2; margin: 18px 0 6px; font-size: 17px; }
.sheet-name { font-size: 22px; margin: 0; } p { margin: 4px 0; } small { display: block; font-size: 13px; font-weight: 400; color: var(--soft); }
.sheet-about { color: var(--soft); } .message { color: var(--warn); font-size: 14px; } .sheet-notes { white-space: pre-line; }
.sheet-controls { display: flex; flex-wrap: wrap; gap: 8px 14px; margin: 12px 0; align-items: flex-start; }
.sheet-field { display: flex; flex-direction: column; min-width: 0; } .sheet-field .message { max-width: 30ch; }
label { font-size: 13px; color: var(--soft); }
input, select, button, .sheet-open { font: inherit; color: inherit; min-height: 44px; padding: 6px 10px; border: 1.5px solid var(--line); border-radius: 4px; background: transparent; max-width: 100%; }
option { color: #000; background: #fff; } input[aria-invalid="true"] { border-color: var(--warn); }
button, .sheet-open { cursor: pointer; } .sheet-open { background: var(--accent); color: var(--on-accent); border-color: var(--accent); text-decoration: none; display: inline-block; line-height: 30px; }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
table { width: 100%; border-collapse: collapse; } th { text-align: start; font-weight: 400; } thead th { font-size: 13px; color: var(--soft); }
th, td { padding: 6px 4px; border-bottom: 1px solid var(--line); vertical-align: top; } .group th { font-weight: 600; padding-top: 14px; }
.number { text-align: end; white-space: nowrap; } td:last-child { font-size: 18px; } details td:last-child { font-size: 16px; } tfoot th, tfoot td { font-weight: 600; border-bottom: 0; }
ol, ul { margin: 4px 0; padding-inline-start: 22px; } li { margin: 4px 0; } summary { min-height: 44px; padding: 10px 0; cursor: pointer; margin-top: 8px; }
.sheet-cautions { border-inline-start: 4px solid var(--accent); padding-inline-start: 12px; margin-top: 18px; font-size: 14px; }
.sheet-cautions > :first-child { margin-top: 0; font-size: 15px; }
.sheet-acts { display: flex; flex-wrap: wrap; gap: 8px; margin-top: 16px; }
.sheet-lack { display: block; min-height: 44px; padding: 4px 8px; margin-top: 4px; font-size: 13px; color: var(--soft); } .sheet-whose { font-weight: 600; }
.sheet-without { border-inline-start: 4px solid var(--accent); padding-inline-start: 12px; margin: 12px 0; } .sheet-without > :first-child { margin-top: 0; }
@media print { .sheet-lack, .sheet-without button, .sheet-controls, .sheet-acts, summary { display: none; } .shared-sheet { border: 0; padding: 0; --paper: #fff; --ink: #000; --soft: #333; } tr { break-inside: avoid; } }
`;
