import { describe, expect, it } from 'vitest';
import { readText, weighText } from './lines.ts';

/** Lines in which a whole kind of line once went wrong: the food's code, and grams where they are the point. */
type Case = [line: string, code: string | null, grams?: number];
const lines: Case[] = [
  // a kitchen verb's word begins an ingredient
  ['zest and juice of 1 lime', 'sr28:09160'],
  ['quarter of a cup of lemon juice', 'sr28:09152', 64],
  // a part behind the unit
  ['a cup and a half of rice', 'sr28:20444', 293],
  ['two teaspoons and a half of salt', 'sr28:02047', 15.2],
  // words cut short
  ['mushr. 200g', 'sr28:11260'],
  ['1 lge sw pot', 'sr28:11507'],
  ['200g br rice', 'sr28:20036', 200],
  ['150g smkd mack', 'sr28:15047'],
  // what the cook does makes no other product; a packed one is preserved
  ['3 tomatoes, pureed', 'sr28:11529'],
  ['1 x 400g carton chopped tomatoes', 'sr28:11885', 400],
  ['1 carton passata 500g', 'sr28:11547', 500],
  ['28-oz can whole tomatoes in juice', 'sr28:11885', 794],
  ['fine corn flour, 200g', 'sr28:20016', 200],
  // a weight of what is left, a second weight of the same, a pack sold clean
  ['2 bananas (220g peeled)', 'sr28:09040', 220],
  ['300 g / 10 oz strawberries', 'sr28:09316', 282],
  ['1 x 200g bag baby spinach', 'sr28:11457', 200],
  ['1 kg chicken thighs, bone in and skin on', 'sr28:05091', 800],
  ['300 g cooked chicken', 'sr28:05013', 300],
  ['300g cooked prawns', 'sr28:15271', 300],
  // adjectives before the unit, joints and their chops, pairs
  ['2 thick slices wholemeal bread', 'sr28:18075', 64],
  ['4 lamb leg chops', 'sr28:17230', 562],
  ['1 pair of chicken breasts', 'sr28:05062', 340],
  ['3 cups loosely packed kale', 'sr28:11233', 51],
  // hand measures behind the food
  ['coriander, small handful', 'sr28:11165', 9.6],
  ['mint bunch', 'sr28:02065'],
  ['walnut-sized piece of butter', 'sr28:01145', 15],
  // what is only wished for is not the tin
  ['1kg potatoes, Maris Piper if you can', 'sr28:11352'],
  ['2 salmon fillets, wild if you can', 'sr28:15236'],
  ['300g peas, fresh or tinned', 'sr28:11304', 300],
  // shells and pods are not food, however well they are scrubbed
  ['2kg mussels, scrubbed and debearded', 'sr28:15164', 560],
  ['1 kg clams, scrubbed', 'sr28:15157', 200],
  ['500g broad beans in pods', 'sr28:11088', 175],
  ['1 small pumpkin', 'sr28:11422', 700],
  ['small bunch coriander', 'sr28:11165', 17],
  // custom decides, and it is said
  ['1 tsp coriander', 'sr28:02013', 1.8],
  ['500g Quillo mince', null],
];

describe('lines of a kind that once went wrong', () => {
  it.each(lines.map(([line, code, grams = null]) => ({ line, code, grams })))('“$line”', ({ line, code, grams }: { line: string; code: string | null; grams: number | null }) => {
    const all = weighText(line);
    expect(all).toHaveLength(1);
    expect(all[0]!.match.code).toBe(code);
    if (grams !== null) expect(Math.abs(all[0]!.weighing.grams!.value / grams - 1)).toBeLessThan(0.03);
  });

  it('says that coriander can also be the leaf, and that carrot tops are not the root', () => {
    expect(weighText('1 tsp coriander')[0]!.match.note?.code).toBe('several-meanings');
    expect(weighText('tops of 1 bunch carrots')[0]!.match.note?.code).toBe('part-ignored');
    expect(weighText('salt and pepper').map(({ match }) => match.note)).toEqual([null, null]);
  });
});

const methods = (text: string, food: string): string[] => {
  const recipe = readText(text);
  const id = recipe.lines.find((line) => line.food.name.includes(food))?.id ?? '';
  return recipe.steps.flatMap((step) => step.actions).filter((action) => action.method !== null && (action.inPot.includes(id) || action.lines.includes(id))).map((action) => action.method!);
};

describe('whole recipes of a kind that once went wrong', () => {
  it('cooks the steak, not the stock, where the method says beef', () => {
    const stew = 'Stew\nServes 4\n\n800g stewing steak\n2 tbsp oil\n500ml beef stock\n\nHeat the oil in a frying pan and brown the beef for 10 minutes. Transfer to the slow cooker.\nAdd the stock. Cook on low for 8 hours.\n';
    expect(methods(stew, 'steak')).toEqual(['fried', 'stewed']);
    expect(methods(stew, 'stock')).toEqual(['stewed']);
  });

  it('reads “make 4 wells” as a step, not as four servings', () => {
    const recipe = readText('Eggs in tomato\nServes 2\n\n1 tin chopped tomatoes\n4 eggs\n\nHeat the tomatoes in a pan and simmer for 10 minutes.\nMake 4 wells and crack in the eggs. Cover and cook 6 minutes.\n');
    expect(recipe.servings?.count.value).toBe(2);
    expect(recipe.steps.at(-1)?.text).toContain('wells');
  });

  it('takes the ingredients from a method that lists none, and says so', () => {
    const recipe = readText('To make a pease pudding.\nTake one pound of split yellow peas, soak them overnight in cold water. Boil them with an onion for two hours. Add two ounces of butter, the yolk of an egg and salt.\n');
    expect(recipe.lines.map((line) => line.food.name)).toEqual(['split yellow peas', 'onion', 'butter', 'egg yolk', 'salt']);
    expect(recipe.findings.map(({ code }) => code)).toContain('ingredients-from-method');
  });

  it('parts what somebody dictates without a pause, and simmers oats in milk', () => {
    const text = 'okay for the porridge you take half a cup of oats one cup of milk a pinch of salt a tablespoon of ground linseed and a banana mashed um and then you cook the oats in the milk with the salt for about five minutes and put the banana on top';
    expect(readText(text).lines.map((line) => line.food.name)).toEqual(['oats', 'milk', 'salt', 'ground linseed', 'banana']);
    expect(methods(text, 'oats')).toEqual(['simmered']);
  });

  it('fries in a pan of its own what is named beside a boiling pot', () => {
    const text = 'Bowl (serves 2)\n\n150g rice\n280g tofu\n1 tbsp sesame oil\n\n* boil rice 25 min, drain\n* oil hot, tofu 6 min\n';
    expect(methods(text, 'rice')).toEqual(['boiled-drained']);
    expect(methods(text, 'tofu')).toEqual(['fried']);
  });

  it('asks about American cups only where the words speak for them', () => {
    const asked = (text: string): boolean => readText(text).findings.some(({ code }) => code === 'us-measures');
    expect(asked('Muffins\n\n2 cups all-purpose flour\n1 cup buttermilk\n\nBake at 375°F for 20 minutes.')).toBe(true);
    expect(asked('Muffins\n\n2 cups plain flour\n250 ml buttermilk\n\nBake at 190°C for 20 minutes.')).toBe(false);
    expect(asked('Dal\n\n1 cup chana dal\n3 cups water\n\nBoil for 20 minutes.')).toBe(false);
  });
});
