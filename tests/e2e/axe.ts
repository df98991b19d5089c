import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  id: string;
  impact: string;
  nodes: { target: string[]; failureSummary?: string }[];
}

/** The serious and critical violations that axe finds on the page (WCAG 2.2 A and AA). */
export async function seriousViolations(page: Page): Promise<string[]> {
  await page.evaluate(source);
  const violations = await page.evaluate(async () => {
    const axe = (globalThis as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } }).axe;
    return (await axe.run()).violations;
  });
  return violations.filter((v) => v.impact === 'serious' || v.impact === 'critical').map((v) => `${v.id}: ${v.nodes.map((n) => `${n.target.join(' ')} ${n.failureSummary ?? ''}`).join(' | ')}`);
}
