// @ts-check

// Fixed texts of the findings.

export const words = Object.freeze({
  severities: { stop: 'Stop', caution: 'Caution', note: 'Note' },
  why: 'How this was worked out',
  working: 'The arithmetic',
  sources: 'Where it comes from',
  lines: 'From',
  setAside: 'Set aside',
  reason: 'Why you set it aside',
  keepReason: 'Set aside with this reason',
  asideTitle: 'Set aside by you',
  notFound: 'Not found at present.',
  takeBack: 'Take back',
  suspendedTitle: 'Meant to stay solid',
  dissolves: 'It should dissolve',
  cold: 'Kept as cold as',
  proof: 'Findings are computed from tables and models. They do not replace a challenge test (ISO 11930), a stability test or the assessment the law asks for. Patch test; keep away from eyes and children; local rules decide.',
  none: 'No formula is open.',
});
