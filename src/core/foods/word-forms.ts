/** Words of a text as a cook may write them: lower case, no accents, hyphens and apostrophes gone, commas kept as breaks. */
export interface Words {
  /** The parts between commas or brackets, each a list of words as written (lower case). */
  readonly parts: readonly (readonly string[])[];
}

const accents = /[\u0300-\u036f]/g;
const lettersNfdLeaves: Readonly<Record<string, string>> = { 'ø': 'o', 'ł': 'l', 'ß': 'ss', 'æ': 'ae', 'œ': 'oe', 'đ': 'd', 'ı': 'i' };
const breaks = /[,;:()[\]{}/–—]|\s-\s/;
const notWord = /[^a-z0-9%&]+/;

const notAscii = /[^\x20-\x7e]/;

/** Lower case without accents; typographic apostrophes become plain ones. */
export function plainText(text: string): string {
  if (!notAscii.test(text)) return text.toLowerCase().replaceAll('`', "'");
  return text
    .normalize('NFKD')
    .replace(accents, '')
    .toLowerCase()
    .replace(/[øłßæœđı]/g, (letter) => lettersNfdLeaves[letter] ?? letter)
    .replace(/[’‘ʼ`´]/g, "'");
}

/** Splits a text into parts at commas and brackets, and each part into words; "brewer's" gives "brewers". */
export function readWords(text: string): Words {
  const parts = plainText(text)
    .split(breaks)
    .map((part) => part.replace(/'/g, '').split(notWord).filter((word) => word !== '' && word !== '&'))
    .filter((part) => part.length > 0);
  return { parts };
}

const irregular: Readonly<Record<string, string>> = {
  leaves: 'leaf', loaves: 'loaf', halves: 'half', knives: 'knife', calves: 'calf', hooves: 'hoof', geese: 'goose', children: 'child',
  feet: 'foot', radii: 'radius', fungi: 'fungus', mice: 'mouse', teeth: 'tooth', cactuses: 'cactus', mangoes: 'mango', prunes: 'prune',
  chillies: 'chilli', chilies: 'chilli', chiles: 'chilli', chilis: 'chilli', chili: 'chilli', chile: 'chilli', chilly: 'chilli', chily: 'chilli', chillis: 'chilli',
  // Words that end in -es or -s and are singular, or whose rule would cut too much.
  cookies: 'cookie', brownies: 'brownie', smoothies: 'smoothie', veggies: 'veggie', pies: 'pie', sties: 'stie', calories: 'calorie', cherries: 'cherry',
  olives: 'olive', chives: 'chive', endives: 'endive', cloves: 'clove', sleeves: 'sleeve', greaves: 'greave', sieves: 'sieve',
  axes: 'axe', cheeses: 'cheese', roses: 'rose', gooses: 'goose', mayonnaises: 'mayonnaise', purees: 'puree', sausages: 'sausage',
  quiches: 'quiche', brioches: 'brioche', potatos: 'potato', tomatos: 'tomato', avocadoes: 'avocado', quinces: 'quince', lenses: 'lens', matzos: 'matzo',
};
const alwaysSingular = new Set([
  'couscous', 'asparagus', 'hummus', 'houmous', 'houmus', 'humous', 'molasses', 'swiss', 'cress', 'watercress', 'bass', 'haggis', 'citrus', 'octopus', 'hibiscus', 'bulgur', 'cactus',
  'grass', 'lemongrass', 'gas', 'plus', 'less', 'boneless', 'skinless', 'seedless', 'glass', 'cassis', 'anis', 'schnapps', 'brussels', 'worcesters', 'asiasis', 'moss', 'press', 'rus', 'ibis', 'jus', 'pus', 'bus', 'bris', 'fungus', 'radius', 'class', 'express', 'process', 'frankfurters', 'ras', 'us', 'as', 'is', 'this', 'grits', 'pancreas', 'christmas', 'physalis', 'caribbeans', 'foie', 'pois', 'petits', 'fraiche', 'greens',
]);

/** The singular of an English kitchen word by rule and by table; words it does not know how to cut come back unchanged. */
export function singular(word: string): string {
  const known = irregular[word];
  if (known !== undefined) return known;
  if (word.length < 4 || !word.endsWith('s') || alwaysSingular.has(word)) return word;
  if (/(ss|us|is)$/.test(word)) return word;
  if (/(ch|sh|x|z|ss)es$/.test(word)) return word.slice(0, -2);
  if (word.endsWith('ies')) return word.length > 4 ? `${word.slice(0, -3)}y` : word.slice(0, -1);
  if (word.endsWith('oes')) return word === 'oboes' || word === 'aloes' || word === 'toes' || word === 'roes' ? word.slice(0, -1) : word.slice(0, -2);
  return word.slice(0, -1);
}

// One spelling of words that British, American and older books write apart.
const spellings: Readonly<Record<string, string>> = {
  yoghurt: 'yogurt', brussel: 'brussels', yoghourt: 'yogurt', yogourt: 'yogurt', fiber: 'fibre', flavor: 'flavour', flavored: 'flavoured', colored: 'coloured', color: 'colour', savory: 'savoury',
  mould: 'mold', doughnut: 'donut', omelet: 'omelette', filet: 'fillet', ketsup: 'ketchup', catsup: 'ketchup', whiskey: 'whisky', licorice: 'liquorice',
  hommus: 'hummus', houmous: 'hummus', houmus: 'hummus', humous: 'hummus', hoummus: 'hummus', humus: 'hummus', bulgar: 'bulgur', bulghur: 'bulgur', burghul: 'bulgur', bulghar: 'bulgur',
  mozarella: 'mozzarella', parmesean: 'parmesan', tumeric: 'turmeric', cardamon: 'cardamom', cardamum: 'cardamom', pimiento: 'pimento', fetta: 'feta', filo: 'filo', phyllo: 'filo', fillo: 'filo',
  rocquette: 'rocket', courgete: 'courgette', broccolli: 'broccoli', brocolli: 'broccoli', brocoli: 'broccoli', zuchini: 'zucchini', avacado: 'avocado', advocado: 'avocado', rasberry: 'raspberry', tomatoe: 'tomato', potatoe: 'potato',
  smokey: 'smoky', kebap: 'kebab', kabab: 'kebab', tahina: 'tahini', taheeni: 'tahini', kefalotiri: 'kefalotyri', haloumi: 'halloumi', hallumi: 'halloumi',
  vermacelli: 'vermicelli', tagliatele: 'tagliatelle', spagetti: 'spaghetti', linguini: 'linguine', fettucine: 'fettuccine', fettucini: 'fettuccine', gnochi: 'gnocchi', pistacio: 'pistachio', almound: 'almond', brazilnut: 'brazilnut',
  chook: 'chicken', tinned: 'canned', coriandar: 'coriander', corriander: 'coriander', cinamon: 'cinnamon', cinnamom: 'cinnamon', vinager: 'vinegar', worchester: 'worcester', worcestershire: 'worcester',
};

/** The words of a name in one list, breaks forgotten: quicker than readWords where there are thousands. */
export function nameWordsOf(name: string): string[] {
  const plain = plainText(name).replaceAll("'", '');
  const out: string[] = [];
  let start = -1;
  for (let i = 0; i <= plain.length; i++) {
    const code = i < plain.length ? plain.charCodeAt(i) : 32;
    const inWord = (code >= 97 && code <= 122) || (code >= 48 && code <= 57) || code === 37;
    if (inWord && start < 0) start = i;
    else if (!inWord && start >= 0) {
      out.push(plain.slice(start, i));
      start = -1;
    }
  }
  return out;
}

const foldCache = new Map<string, string>();
const foldCacheLimit = 20_000;

/** A word in the one form under which names are looked up: singular, one spelling. */
export function foldWord(word: string): string {
  const cached = foldCache.get(word);
  if (cached !== undefined) return cached;
  const one = singular(spellings[word] ?? word);
  const folded = spellings[one] ?? one;
  if (foldCache.size < foldCacheLimit) foldCache.set(word, folded);
  return folded;
}

/** The look-up key of a run of words: folded and joined, so that "chick peas" and "chickpeas" are one. */
export function nameKey(words: readonly string[]): string {
  return words.map(foldWord).join('');
}
