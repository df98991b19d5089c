import { describe, expect, it } from 'vitest';
import { checkScript, type LawId, type VerdictKind } from '../../../src/core/statements/index.ts';
import { loadRules, plates, sayInput } from './rules.ts';

const { rules, vocabulary } = loadRules();
function kindsOf(text: string, plate = plates.rich, law: LawId = 'eu'): VerdictKind[] {
  const checked = checkScript(text, sayInput(plate, [law]), rules, vocabulary);
  if (checked.kind !== 'checked') throw new Error(checked.why);
  return checked.sentences.flatMap((s) => s.claims.map((c) => c.verdicts[0]?.kind ?? 'free'));
}

describe('verdicts on a dish', () => {
  it('holds a content claim against 100 g: packed means high', () => {
    expect(kindsOf('This stew is packed with iron.')).toEqual(['say']);
    expect(kindsOf('This stew is packed with iron.', plates.lean)).toEqual(['short']);
    expect(kindsOf('This stew is packed with iron.', plates.unknown)).toEqual(['unknown']);
    expect(kindsOf('This bake is a source of iron.', plates.wide)).toEqual(['near']);
  });
  it('never lets "low" hold on missing data', () => {
    expect(kindsOf('This bake is low in salt.', plates.wide)).toEqual(['unknown']);
    expect(kindsOf('This dish is low in salt.')).toEqual(['say']);
  });
  it('judges a figure by the portion', () => {
    expect(kindsOf("A whole day's vitamin K in one bowl!")).toEqual(['say']);
    expect(kindsOf("A whole day's vitamin K in one bowl!", plates.lean)).toEqual(['short']);
    expect(kindsOf("A whole day's vitamin K in one bowl!", plates.rich, 'us')).toEqual(['short']);
    expect(kindsOf('One portion gives 4.5 mg of iron.')).toEqual(['say']);
  });
  it('passes a permitted wording when its condition of use holds, and only then', () => {
    expect(kindsOf('Iron contributes to normal oxygen transport in the body.')).toEqual(['say-with']);
    expect(kindsOf('Iron contributes to normal oxygen transport in the body.', plates.lean)).toEqual(['short']);
    expect(kindsOf('Iron feeds your blood.')).toEqual(['not-lawful']);
  });
  it.each(['eu', 'gb', 'us', 'codex'] as const)('%s: no disease statement, as claim, hedge, report, question or testimonial', (law) => {
    for (const text of ['This soup cures PCOS.', 'This soup may ease cramps.', 'Studies say this soup eases cramps.', 'Could this soup ease your cramps?', "My client's cysts were gone.", 'Your hands stop shaking.']) expect(kindsOf(text, plates.rich, law)).toEqual(['not-lawful']);
  });
  it('lets a denial and a caution stand', () => {
    expect(kindsOf('This soup does not cure PCOS.')).toEqual(['free']);
    expect(kindsOf('If you take warfarin, keep your greens steady.')).toEqual(['free']);
  });
  it('needs her own evidence for effects in the United States and refuses herbs in the EU', () => {
    expect(kindsOf('It is good for your bones.', plates.rich, 'us')).toEqual(['proof']);
    expect(kindsOf('Ginger is good for digestion.')).toEqual(['not-lawful']);
  });
});

describe('input that cannot be read', () => {
  const why = (text: string): string => {
    const checked = checkScript(text, sayInput(plates.rich), rules, vocabulary);
    return checked.kind === 'checked' ? 'checked' : checked.why;
  };
  it.each([
    ['Dieser Eintopf ist reich an Eisen und gut für die Knochen, er hilft auch gegen Müdigkeit.', 'other'],
    ['Ce plat est riche en fer et il est bon pour les os.', 'other'],
    ['यह दाल लोहे से भरपूर है और थकान दूर करती है।', 'other'],
    ['这个汤富含铁质。', 'other'],
    ['🍲🥬💪✨', 'no-words'],
    ['', 'no-words'],
    ['... !!! ???', 'no-words'],
    ['x'.repeat(1_000_000), 'too-long'],
  ])('says that nothing was checked: %.30s', (text, expected) => {
    expect(why(text)).toBe(expected);
  });
  it.each(['This stew is packed with iron.', 'Iron-rich lentils!', 'Bloat-busting soup 🍲', '#hormonebalance', 'Packed with iron, folate, magnesium'])('reads short English: %s', (text) => {
    expect(why(text)).toBe('checked');
  });
});
