/**
 * What one choice for a line adds to a portion, in the order of the search's measures. NaN where
 * it is not known: unknown never counts towards a least amount and never proves a most.
 */
export interface SearchOption {
  readonly values: readonly number[];
  /** 0 for the line as it is; higher for a food that fits its part less. */
  readonly loss: number;
  /** Breaks a rule that holds whatever else is chosen (an allergen, a diet). */
  readonly forbidden: boolean;
}

/** A line: its first option is the food as it is. */
export interface SearchLine {
  readonly options: readonly SearchOption[];
}

/** A bound on a sum over all lines, in a portion. */
export interface SearchBound {
  readonly measure: number;
  readonly least: number | null;
  readonly most: number | null;
}

export interface SearchAsked {
  readonly lines: readonly SearchLine[];
  readonly bounds: readonly SearchBound[];
  /** At most this many lines change, 0 to 3. */
  readonly swaps: number;
  /** How many answers to give. */
  readonly answers: number;
}

export interface SearchAnswer {
  /** Changed lines by index, with the option chosen. */
  readonly choices: readonly { readonly line: number; readonly option: number }[];
  /** Known sums of every measure. */
  readonly totals: readonly number[];
  readonly loss: number;
}

export interface SearchResult {
  /** Fewest swaps first, then the least loss; exact: no better combination was passed over. */
  readonly answers: readonly SearchAnswer[];
  /** Combinations looked at, for the curious. */
  readonly looked: number;
  /** Bounds that even the best options of every line together cannot meet. */
  readonly outOfReach: readonly number[];
}

const slack = 1e-9;

/** One side of a bound as "the sum of these is at least": options of each line, changes against the line as it is. */
interface Side {
  readonly bound: number;
  /** What is still missing with no line changed; 0 or below is met. */
  readonly missing: number;
  /** gain[line][option] */
  readonly gain: readonly Float64Array[];
  /** The largest gain of each line. */
  readonly best: Float64Array;
}

function sidesOf(asked: SearchAsked): Side[] {
  return asked.bounds.flatMap(({ measure, least, most }, bound) => {
    const side = (sign: 1 | -1, limit: number): Side => {
      // Towards a least an unknown counts 0; against a most it counts endless.
      const of = (option: SearchOption): number => {
        const value = option.values[measure] ?? NaN;
        return Number.isNaN(value) ? (sign === 1 ? 0 : Number.NEGATIVE_INFINITY) : sign * value;
      };
      const base = asked.lines.map((line) => of(line.options[0]!));
      const known = base.reduce((a, b) => a + (Number.isFinite(b) ? b : 0), 0);
      const gain = asked.lines.map((line, i) => {
        const from = Number.isFinite(base[i]!) ? base[i]! : 0;
        return Float64Array.from(line.options, (option, o) => (o === 0 ? 0 : of(option) - from));
      });
      return { bound, missing: sign * limit - known, gain, best: Float64Array.from(gain, (g) => g.reduce((a, b) => Math.max(a, b), 0)) };
    };
    return [...(least === null ? [] : [side(1, least)]), ...(most === null ? [] : [side(-1, most)])];
  });
}

/** The largest sum of `count` of the values at or after each index, so that hopeless branches are cut. */
function bestAfter(best: Float64Array, count: number): Float64Array[] {
  return Array.from({ length: count + 1 }, (_, take) => {
    const out = new Float64Array(best.length + 1);
    for (let from = 0; from <= best.length; from++) {
      out[from] = [...best.slice(from)].sort((a, b) => b - a).slice(0, take).reduce((a, b) => a + b, 0);
    }
    return out;
  });
}

/**
 * Finds which lines to swap so that every bound holds and nothing forbidden is left, exactly: all
 * combinations of up to `swaps` lines over all their options are covered, branches that cannot
 * meet a bound or beat the answers in hand are cut. Lines whose own food is forbidden must change.
 */
export function searchSwaps(asked: SearchAsked): SearchResult {
  const { lines, answers: wanted } = asked;
  const swaps = Math.max(0, Math.min(3, Math.floor(asked.swaps)));
  const sides = sidesOf(asked);
  const after = sides.map((side) => bestAfter(side.best, swaps));
  const must = new Set(lines.flatMap((line, i) => (line.options[0]!.forbidden ? [i] : [])));
  const mustAfter = Array.from({ length: lines.length + 1 }, (_, from) => [...must].filter((i) => i >= from).length);
  const order = lines.map((line) => line.options.map((_, o) => o).filter((o) => o > 0 && !line.options[o]!.forbidden).sort((a, b) => line.options[a]!.loss - line.options[b]!.loss));
  let found: SearchAnswer[] = [];
  let looked = 0;
  const worst = (): number => (found.length < wanted ? Number.POSITIVE_INFINITY : found.at(-1)!.loss);
  const chosen: { line: number; option: number }[] = [];
  const missing = Float64Array.from(sides, (s) => s.missing);

  function keep(loss: number): void {
    const totals = asked.bounds.map(({ measure }) => lines.reduce((sum, line, i) => {
      const value = line.options[chosen.find((c) => c.line === i)?.option ?? 0]!.values[measure] ?? NaN;
      return sum + (Number.isNaN(value) ? 0 : value);
    }, 0));
    found = [...found, { choices: chosen.map((c) => ({ ...c })), totals, loss }].sort((a, b) => a.loss - b.loss).slice(0, wanted);
  }

  function descend(from: number, left: number, loss: number): void {
    if (left === 0) {
      looked++;
      if (mustAfter[from] === 0 && missing.every((m) => m <= slack)) keep(loss);
      return;
    }
    for (let line = from; line <= lines.length - left; line++) {
      // A forbidden line before this one would stay as it is.
      if (mustAfter[from]! - mustAfter[line]! > 0 || mustAfter[line]! > left) {
        if (mustAfter[from]! - mustAfter[line]! > 0) return;
        continue;
      }
      if (sides.some((_, s) => missing[s]! > after[s]![left]![line]! + slack)) return;
      for (const option of order[line]!) {
        const next = loss + lines[line]!.options[option]!.loss;
        if (next >= worst() - slack) break;
        let hopeless = false;
        for (let s = 0; s < sides.length; s++) {
          if (missing[s]! - sides[s]!.gain[line]![option]! > after[s]![left - 1]![line + 1]! + slack) {
            hopeless = true;
            break;
          }
        }
        if (hopeless) {
          looked++;
          continue;
        }
        for (let s = 0; s < sides.length; s++) missing[s]! -= sides[s]!.gain[line]![option]!;
        chosen.push({ line, option });
        descend(line + 1, left - 1, next);
        chosen.pop();
        for (let s = 0; s < sides.length; s++) missing[s]! += sides[s]!.gain[line]![option]!;
      }
    }
  }

  // Fewest swaps first: more are only tried where fewer do not reach.
  for (let count = 0; count <= swaps && found.length === 0; count++) descend(0, count, 0);
  const reach = sides.filter((side, s) => side.missing > after[s]![swaps]![0]! + slack).map((side) => side.bound);
  return { answers: found, looked, outOfReach: [...new Set(reach)] };
}
