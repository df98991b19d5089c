import type { IntakeAuthority } from '../core/people/index.ts';

const words: Readonly<Record<IntakeAuthority, string>> = {
  nasem: 'North America (NASEM)',
  efsa: 'the European Union (EFSA)',
  'eu-label': 'EU and UK labels',
};

/** Who set a reference intake, in words. */
export function authorityText(authority: IntakeAuthority): string {
  return words[authority];
}
