import type { Checked, LawId } from './law.ts';

/** One clause of a law and what Truepot does with it. */
export interface LawClause {
  readonly id: string;
  readonly law: LawId;
  readonly clause: string;
  readonly source: string;
  readonly checked: Checked;
  readonly covered: 'computed' | 'read' | 'told' | 'left-out';
  readonly rule: string;
  readonly why?: string;
}
