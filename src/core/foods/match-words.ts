import type { FoodForm } from './kitchen-name.ts';
import { foldWord } from './word-forms.ts';

const fold = (text: string): ReadonlySet<string> => new Set(text.split(/\s+/).filter((w) => w !== '').map(foldWord));

/** Words that never change which food is meant: praise, size, ripeness, provenance, cutting, temperature. */
export const idleWords = fold(`
  a an the of some my your our its any very extra good quality goodquality best decent nice lovely great favourite favorite fine really quite fairly about approx approximately roughly
  small medium large big little tiny huge mini giant jumbo average sized size medium-sized bite heaped heaping scant level generous rounded
  ripe overripe underripe unripe firm soft softened plump juicy crisp crunchy tender young mature old aged hard waxy floury starchy fluffy
  organic free range freerange outdoor reared wild farmed farm local british english scottish welsh irish french italian greek spanish indian american seasonal homemade home made shop bought supermarket ready
  fresh freshly newly
  chopped sliced diced cubed cut minced grated shredded torn crushed crumbled mashed julienned quartered halved cored trimmed peeled unpeeled skinned skinless skin on off boneless bone boned deboned pitted stoned seeded deseeded unseeded seedless
  topped tailed washed rinsed drained undrained scrubbed cleaned gutted scaled filleted picked stripped plucked shelled unshelled hulled podded husked beaten whisked whipped melted cold warm hot chilled room temperature
  finely coarsely thinly thickly lengthways lengthwise diagonally crosswise thin thick long short fine coarse fat chunky into pieces bits
  sifted packed loosely tightly lightly well patted squeezed separated divided optional needed required remaining reserved taste serve serving garnish plus more about
  kernel kernels finger thumb each per piece pieces chunk chunks slice slices wedge wedges cube cubes ring rings strip strips stick sticks spear spears floret florets segment segments round rounds matchstick matchsticks half halves quarter quarters
  clove cloves bulb bulbs head heads stalk stalks stem stems sprig sprigs bunch bunches handful handfuls pod pods ear ears knob fillet fillets flesh tail-on new-season season
  can tin jar packet pack pouch bag box carton tub bottle ball block bar loaf
  up down out over apart bruised bashed smashed split uncut spiralized spiralised riced ribboned shucked debearded deveined jointed scored blended blitzed pounded seasoned wilted torn snipped unwaxed unwaxed butterflied boiling tepid lukewarm cooled sieved shaken crosswise level stale
  rasher eat cook use removed discarded dusting frying deep shallow greasing brushing rolling sprinkling drizzling coating topping decorate decorating dressing
  pure natural plain-tasting real proper traditional authentic standard regular normal ordinary everyday premium luxury artisan vegan vegetarian gluten glutenfree free dairyfree kosher halal
`);

/** Of these, the cutting and beating words: before a name they may make another food ("chopped tomatoes" is a tin). */
export const cutWords = fold('chopped sliced diced cubed cut minced grated shredded torn crushed crumbled mashed julienned quartered halved beaten whisked whipped melted trimmed peeled cored');

/** How cooks shorten words on a card. Read so only where the words as written name no better food. */
export const abbreviations: ReadonlyMap<string, readonly string[]> = new Map(Object.entries({
  br: 'brown', bwn: 'brown', wh: 'white', wht: 'white', ww: 'wholewheat', wm: 'wholemeal', gr: 'ground', grd: 'ground', grnd: 'ground', blk: 'black', spr: 'spring', swt: 'sweet', sw: 'sweet',
  pot: 'potato', pots: 'potato', spud: 'potato', spuds: 'potato', on: 'onion', ons: 'onion', tom: 'tomato', toms: 'tomato', carr: 'carrot', courg: 'courgette', aub: 'aubergine', cauli: 'cauliflower', caul: 'cauliflower',
  broc: 'broccoli', brocc: 'broccoli', cuc: 'cucumber', cuke: 'cucumber', spin: 'spinach', mush: 'mushroom', mushr: 'mushroom', shrooms: 'mushroom', sweetc: 'sweetcorn', parsl: 'parsley', cor: 'coriander', corr: 'coriander',
  rosem: 'rosemary', garl: 'garlic', ging: 'ginger', cinn: 'cinnamon', cin: 'cinnamon', nutm: 'nutmeg', pap: 'paprika', turm: 'turmeric', chix: 'chicken', chx: 'chicken', chkn: 'chicken', bf: 'beef', mack: 'mackerel',
  sard: 'sardine', bnls: 'boneless', sknls: 'skinless', skls: 'skinless', smk: 'smoked', smkd: 'smoked', fzn: 'frozen', froz: 'frozen', frz: 'frozen', frzn: 'frozen', tstd: 'toasted', ses: 'sesame', sunfl: 'sunflower', pumpk: 'pumpkin',
  veg: 'vegetable', stk: 'stock', vin: 'vinegar', choc: 'chocolate', parm: 'parmesan', moz: 'mozzarella', mozz: 'mozzarella', ched: 'cheddar', yog: 'yogurt', yogh: 'yogurt', marg: 'margarine', marge: 'margarine', unsalt: 'unsalted',
  pb: 'peanut butter', evoo: 'olive oil', oj: 'orange juice', bicarb: 'bicarbonate of soda', sr: 'self raising', vanil: 'vanilla', alm: 'almond', waln: 'walnut', chckp: 'chickpea', lent: 'lentil', dr: 'drained', chp: 'chopped', chpd: 'chopped', chopd: 'chopped', slcd: 'sliced', grtd: 'grated', drnd: 'drained',
}).map(([short, long]) => [short, long.split(' ').map(foldWord)]));

/** Colours: they tell sorts of one food apart, so they cost a little when no name holds them. */
export const colourWords = fold('red green yellow orange white black brown purple golden gold pink blue dark light pale deep rainbow mixed bicolour striped heirloom heritage');

/** Words after which the rest of the phrase no longer names the food: "tuna in oil", "eggs for brushing". */
export const phraseBreaks = fold('in with without for from to as at on such like including if until after before which that not');

/** What tinned food lies in. */
export const tinLiquids = fold('sauce brine oil water juice syrup vinegar');

/** Parts that can follow a plant's name without changing the food, for leafy plants and herbs. */
export const leafyPlants = fold(`spinach lettuce cabbage kale chard rocket arugula watercress cress basil mint coriander cilantro parsley sage thyme oregano rosemary tarragon dill chervil bay sorrel
  lemongrass pak choi bok choy endive chicory radicchio cavolo nero greens marjoram purslane amaranth moringa methi fenugreek dandelion nettle gem cos romaine iceberg collard savoy perilla shiso tea lovage`);

/** Cuts and joints that a general name ("chicken", "lamb") can stand in for, at some loss. */
export const meatParts = fold('breast thigh leg wing drumstick shoulder loin rump neck shank belly chop steak fillet joint mince escalope cutlet rib medallion tenderloin brisket rack saddle crown quarter strip goujon supreme flank topside silverside chuck shin skirt');

/** Groups in which those cuts make sense. */
export const fleshGroup = /poultry|pork|beef|lamb|fish|animal meat|marine|fresh water/i;

/** A second food word before these heads makes another food ("almond milk", "rice vinegar"). The same holds for any head unless `varieties` allows it. */
export const varieties: readonly (readonly [ReadonlySet<string>, ReadonlySet<string>])[] = [
  [fold('lemon lime apple pineapple orange chocolate ginger cinnamon'), fold('thyme mint sage basil balm verbena')],
  [fold('cherry plum beef pear vine grape salad'), fold('tomato')],
  [fold('salad spring'), fold('onion potato')],
  [fold('sea rock table cooking'), fold('salt')],
  [fold('salad cooking'), fold('oil leaf')],
  [fold('vine'), fold('leaf')],
  [fold('bread cake plain'), fold('flour')],
];

/** Bare heads that take their nature from the word before them: an unknown word there most likely makes another food. */
export const kindHeads = fold('milk oil sauce cheese flour vinegar stock broth cream bread tea juice noodle sausage seed nut salad soup paste syrup powder drink wine cake biscuit dressing jam jelly spread bean water steak liver mince fish berry');

interface FormWord {
  readonly form: FoodForm;
  /** A weak word counts only when the entry has the form ("dry" white wine, "light" cream). */
  readonly weak: boolean;
}

const formTable: Readonly<Record<string, readonly [FoodForm, 'strong' | 'weak']>> = {
  fresh: ['raw', 'weak'], raw: ['raw', 'strong'], uncooked: ['raw', 'strong'], freshly: ['raw', 'weak'],
  dried: ['dried', 'strong'], dry: ['dried', 'weak'], dehydrated: ['dried', 'strong'], desiccated: ['dried', 'strong'], freezedried: ['dried', 'strong'],
  canned: ['canned', 'strong'], tin: ['canned', 'strong'], jar: ['canned', 'weak'], jarred: ['canned', 'weak'], bottled: ['canned', 'weak'], brine: ['canned', 'weak'],
  cooked: ['cooked', 'strong'], boiled: ['cooked', 'strong'], precooked: ['cooked', 'strong'], leftover: ['cooked', 'weak'], rotisserie: ['cooked', 'weak'], steamed: ['cooked', 'strong'], pouch: ['cooked', 'weak'], poached: ['cooked', 'weak'], hardboiled: ['cooked', 'weak'],
  frozen: ['frozen', 'strong'], thawed: ['frozen', 'strong'], defrosted: ['frozen', 'strong'],
  ground: ['ground', 'strong'], milled: ['ground', 'strong'], powder: ['powder', 'strong'], powdered: ['powder', 'strong'],
  whole: ['whole', 'weak'],
  smoked: ['smoked', 'strong'], smoky: ['smoked', 'weak'], roasted: ['roasted', 'strong'], roast: ['roasted', 'strong'], chargrilled: ['roasted', 'weak'], toasted: ['toasted', 'strong'],
  pickled: ['pickled', 'strong'], salted: ['salted', 'strong'],
  juice: ['juice', 'strong'], juiced: ['juice', 'weak'], squeezed: ['juice', 'weak'], zested: ['peel', 'weak'], zest: ['peel', 'strong'], rind: ['peel', 'strong'], peel: ['peel', 'strong'],
  oil: ['oil', 'strong'], flour: ['flour', 'strong'], paste: ['paste', 'strong'], puree: ['paste', 'weak'], pureed: ['paste', 'weak'], meal: ['ground', 'strong'], flake: ['flakes', 'strong'], flaked: ['flakes', 'weak'],
  sprouted: ['sprouted', 'strong'], instant: ['instant', 'weak'], quickcook: ['instant', 'weak'], easycook: ['instant', 'weak'],
  wholemeal: ['wholemeal', 'strong'], wholewheat: ['wholemeal', 'strong'], wholegrain: ['wholemeal', 'strong'],
  lowfat: ['low-fat', 'strong'], reducedfat: ['low-fat', 'strong'], halffat: ['low-fat', 'strong'], lighter: ['low-fat', 'weak'], light: ['low-fat', 'weak'], lite: ['low-fat', 'weak'], lowerfat: ['low-fat', 'strong'], semiskimmed: ['low-fat', 'strong'],
  skimmed: ['skimmed', 'strong'], skim: ['skimmed', 'strong'], nonfat: ['skimmed', 'strong'], fatfree: ['skimmed', 'strong'],
  sweetened: ['sweetened', 'weak'], unsalted: ['unsalted', 'strong'],
};

const formByWord = new Map<string, FormWord>(Object.entries(formTable).map(([word, [form, strength]]) => [foldWord(word), { form, weak: strength === 'weak' }]));

/** Spellings of the form and cutting words, for reading slips: "tined" is a slip of "tinned". */
export const formSpellings: readonly string[] = [...Object.keys(formTable), 'tinned', 'flakes', 'finely', 'roughly', 'thinly', 'coarsely', 'chopped', 'sliced', 'diced', 'peeled', 'grated', 'crushed', 'drained'].filter((w) => w.length >= 5);

/** The form that a word asks for, or null. Two-word forms come joined: `lowfat`, `wholewheat`. */
export function formOfWord(word: string): FormWord | null {
  return formByWord.get(word) ?? null;
}

/** Forms that are other foods: an entry without them is not what was asked for. */
export const productForms: ReadonlySet<FoodForm> = new Set<FoodForm>(['juice', 'peel', 'oil', 'flour', 'paste', 'powder']);

/** What may stand in for a form that an entry lacks, best first. A form without a row falls to the usual one. */
export const standIns: Readonly<Partial<Record<FoodForm, readonly FoodForm[]>>> = {
  dried: ['ground', 'powder', 'flakes', 'whole'],
  canned: ['cooked', 'frozen', 'raw'],
  cooked: ['canned', 'frozen', 'raw'],
  frozen: ['raw', 'cooked'],
  ground: ['powder', 'dried', 'whole'],
  powder: ['ground', 'dried'],
  smoked: ['salted', 'cooked', 'raw'],
  roasted: ['toasted', 'cooked', 'raw'],
  toasted: ['roasted', 'raw', 'dried'],
  pickled: ['canned', 'raw'],
  flakes: ['dried', 'ground'],
  sprouted: ['raw'],
  'low-fat': ['skimmed'],
  skimmed: ['low-fat'],
};

/** Words that tell that a herb or root is fresh although nobody wrote it. */
export const freshCuts = fold('chopped torn picked shredded snipped grated sliced leaf sprig bunch handful stripped minced julienned peeled');
