import { isNutrientId } from '../foods/index.ts';
import { anchors, directions, evidenceGrades, noAdvice, type Emphasis, type RuleAdvice, type Scheme, type SchemeRule, type SchemeWindow, type WindowEdge } from './scheme.ts';

/** What is wrong with a scheme and where; words are in messages/scheme.ts. */
export interface SchemeProblem {
  readonly at: string;
  readonly code: 'missing' | 'not-text' | 'not-number' | 'not-a-list' | 'unknown-word' | 'out-of-range' | 'unknown-key' | 'same-id' | 'window-backwards' | 'unknown-nutrient';
  readonly data: Readonly<Record<string, string | number>>;
}

type Raw = Readonly<Record<string, unknown>>;

/** Reads one object of a scheme and gathers every problem, so that all can be mended at once. */
class Reader {
  readonly problems: SchemeProblem[] = [];

  problem(at: string, code: SchemeProblem['code'], data: SchemeProblem['data'] = {}): void {
    this.problems.push({ at, code, data });
  }

  object(at: string, value: unknown, keys: readonly string[]): Raw {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) {
      this.problem(at, 'missing');
      return {};
    }
    for (const key of Object.keys(value)) if (!keys.includes(key)) this.problem(`${at}.${key}`, 'unknown-key', { known: keys.join(', ') });
    return value as Raw;
  }

  text(at: string, value: unknown, usual: string | null = null): string {
    if (typeof value === 'string' && value.trim() !== '') return value.trim();
    if (usual !== null && value === undefined) return usual;
    this.problem(at, value === undefined ? 'missing' : 'not-text');
    return '';
  }

  textOrNull(at: string, value: unknown): string | null {
    return value === undefined || value === null ? null : this.text(at, value);
  }

  number(at: string, value: unknown, range: readonly [number, number]): number {
    if (typeof value !== 'number' || !Number.isFinite(value)) {
      this.problem(at, value === undefined ? 'missing' : 'not-number');
      return range[0];
    }
    if (value < range[0] || value > range[1]) this.problem(at, 'out-of-range', { value, from: range[0], to: range[1] });
    return value;
  }

  numberOrNull(at: string, value: unknown, range: readonly [number, number]): number | null {
    return value === undefined || value === null ? null : this.number(at, value, range);
  }

  word<T extends string>(at: string, value: unknown, words: readonly T[]): T {
    if (words.includes(value as T)) return value as T;
    this.problem(at, value === undefined ? 'missing' : 'unknown-word', { value: typeof value === 'string' ? value : typeof value, known: words.join(', ') });
    return words[0]!;
  }

  list(at: string, value: unknown): readonly unknown[] {
    if (value === undefined || value === null) return [];
    if (Array.isArray(value)) return value as unknown[];
    this.problem(at, 'not-a-list');
    return [];
  }
}

const plainEmphases = ['energy', 'carbohydrate', 'fat', 'protein', 'fibre'];

function readEdge(r: Reader, at: string, value: unknown): WindowEdge {
  const raw = r.object(at, value, ['anchor', 'day']);
  const anchor = r.word(`${at}.anchor`, raw['anchor'], anchors);
  const range: readonly [number, number] = anchor === 'period-start' ? [1, 60] : anchor === 'ovulation' ? [-40, 25] : [-60, -1];
  return { anchor, day: r.number(`${at}.day`, raw['day'], range) };
}

function readWindow(r: Reader, at: string, value: unknown): SchemeWindow {
  const raw = r.object(at, value, ['from', 'to', 'stretch']);
  const window: SchemeWindow = { from: readEdge(r, `${at}.from`, raw['from']), to: readEdge(r, `${at}.to`, raw['to']), stretch: raw['stretch'] === undefined ? 'fixed' : r.word(`${at}.stretch`, raw['stretch'], ['fixed', 'scaled']) };
  if (window.from.anchor === window.to.anchor && window.from.day > window.to.day) r.problem(at, 'window-backwards', { from: window.from.day, to: window.to.day });
  return window;
}

function readAdvice(r: Reader, at: string, value: unknown): RuleAdvice {
  if (value === undefined) return noAdvice;
  const raw = r.object(at, value, Object.keys(noAdvice));
  const texts = (key: string): string[] => r.list(`${at}.${key}`, raw[key]).map((v, i) => r.text(`${at}.${key}[${i}]`, v));
  return {
    emphasis: r.list(`${at}.emphasis`, raw['emphasis']).map((v, i): Emphasis => {
      const where = `${at}.emphasis[${i}]`;
      const e = r.object(where, v, ['what', 'direction']);
      const what = r.text(`${where}.what`, e['what']);
      if (what !== '' && !plainEmphases.includes(what) && !isNutrientId(what)) r.problem(`${where}.what`, 'unknown-nutrient', { value: what });
      return { what, direction: r.word(`${where}.direction`, e['direction'], directions) };
    }),
    favour: texts('favour'),
    leave: texts('leave'),
    fastingHours: r.numberOrNull(`${at}.fastingHours`, raw['fastingHours'], [0, 72]),
    energyKcal: r.numberOrNull(`${at}.energyKcal`, raw['energyKcal'], [0, 6000]),
    proteinG: r.numberOrNull(`${at}.proteinG`, raw['proteinG'], [0, 400]),
    carbohydrateG: r.numberOrNull(`${at}.carbohydrateG`, raw['carbohydrateG'], [0, 800]),
    training: r.textOrNull(`${at}.training`, raw['training']),
    heatAndCold: r.textOrNull(`${at}.heatAndCold`, raw['heatAndCold']),
    workload: r.textOrNull(`${at}.workload`, raw['workload']),
    sleep: r.textOrNull(`${at}.sleep`, raw['sleep']),
  };
}

function readRule(r: Reader, at: string, value: unknown): SchemeRule {
  const raw = r.object(at, value, ['id', 'title', 'window', 'fixedDays', 'advice', 'evidence', 'source']);
  const fixed = raw['fixedDays'] === undefined || raw['fixedDays'] === null ? null : r.object(`${at}.fixedDays`, raw['fixedDays'], ['from', 'to']);
  return {
    id: r.text(`${at}.id`, raw['id']),
    title: r.text(`${at}.title`, raw['title']),
    window: readWindow(r, `${at}.window`, raw['window']),
    fixedDays: fixed && { from: r.number(`${at}.fixedDays.from`, fixed['from'], [1, 60]), to: r.numberOrNull(`${at}.fixedDays.to`, fixed['to'], [1, 60]) },
    advice: readAdvice(r, `${at}.advice`, raw['advice']),
    evidence: r.word(`${at}.evidence`, raw['evidence'], evidenceGrades),
    source: r.text(`${at}.source`, raw['source']),
  };
}

/** Reads a scheme from parsed YAML or JSON. With any problem the scheme is null and all problems are told. */
export function readScheme(value: unknown): { scheme: Scheme | null; problems: readonly SchemeProblem[] } {
  const r = new Reader();
  const raw = r.object('scheme', value, ['id', 'name', 'about', 'invented', 'textbook', 'sayFrom', 'rules']);
  const textbook = raw['textbook'] === undefined ? { length: 28, ovulationDay: 14 } : r.object('scheme.textbook', raw['textbook'], ['length', 'ovulationDay']);
  const scheme: Scheme = {
    id: r.text('scheme.id', raw['id']),
    name: r.text('scheme.name', raw['name']),
    about: r.text('scheme.about', raw['about'], ''),
    invented: raw['invented'] === true,
    textbook: { length: r.number('scheme.textbook.length', textbook['length'], [15, 60]), ovulationDay: r.number('scheme.textbook.ovulationDay', textbook['ovulationDay'], [5, 45]) },
    sayFrom: raw['sayFrom'] === undefined ? 0.6 : r.number('scheme.sayFrom', raw['sayFrom'], [0.5, 1]),
    rules: r.list('scheme.rules', raw['rules']).map((v, i) => readRule(r, `rule ${i + 1}`, v)),
  };
  const seen = new Set<string>();
  for (const rule of scheme.rules) {
    if (seen.has(rule.id)) r.problem(`rule ${rule.id}`, 'same-id');
    seen.add(rule.id);
  }
  return { scheme: r.problems.length === 0 ? scheme : null, problems: r.problems };
}
