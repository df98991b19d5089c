import { bench, describe } from 'vitest';
import { checkScript } from '../src/core/statements/index.ts';
import { loadRules, plates, sayInput } from '../tests/cases/statements/rules.ts';

const { rules, vocabulary } = loadRules();
const sentences = [
  'This stew is packed with iron, and it is ready in half an hour.', "A whole day's vitamin K in one bowl!", 'It keeps your blood pressure down, or so my grandmother said.', 'Steaming keeps more folate than boiling does.',
  'Now turn the heat down and stir until the sauce is glossy.', 'Good for your bones and your hormones, and the chard is sweet.', "My client's cysts were gone after three months.", 'If you take warfarin, keep your greens steady.',
  'I love the smell of cumin in a warm pan.', 'You get 12 g of protein and only 300 calories per bowl.', 'Could beans ease your cramps before your period?', 'Serve it with a wedge of lemon and plenty of pepper.',
];
const script: string[] = [];
while (script.join(' ').split(/\s+/).length < 1500) script.push(...sentences.map((s, i) => `${s.slice(0, -1)} (${script.length + i}).`));
const text = script.join(' ').split(/\s+/).slice(0, 1500).join(' ');

describe('a script of 1,500 words', () => {
  // Sentences read before are remembered: each run forgets them first.
  const check = (laws?: Parameters<typeof sayInput>[1]): void => {
    vocabulary.read.clear();
    checkScript(text, sayInput(plates.rich, laws), rules, vocabulary);
  };
  bench('one law', () => check(['eu']));
  bench('four laws', () => check());
});
