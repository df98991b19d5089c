import type { Food } from '../foods/index.ts';

/**
 * Families of foods that behave alike in the pot. Yields, losses and the accuracy bench are
 * keyed by these; a family is never both fitted and tested in the bench.
 */
export const cookedFamilies = [
  'beef', 'veal', 'lamb', 'pork', 'game', 'offal', 'chicken', 'turkey', 'other-poultry', 'sausages', 'fish', 'crustaceans', 'molluscs', 'eggs', 'dairy',
  'leafy-greens', 'cabbages', 'roots', 'potatoes', 'starchy-tubers', 'squashes', 'pods-and-fresh-seeds', 'onions', 'sweetcorn', 'fruit-vegetables', 'stalks',
  'mushrooms', 'sprouted-seeds', 'other-vegetables', 'pulses', 'soya', 'nuts-and-seeds', 'rice', 'pasta', 'grains', 'breakfast-cereals', 'flours', 'fruit',
  'dried-fruit', 'herbs-and-spices', 'fats', 'liquids', 'other',
] as const;
export type CookedFamily = (typeof cookedFamilies)[number];

export type CookedGroup = 'meat' | 'poultry' | 'offal' | 'fish' | 'shellfish' | 'sausages' | 'eggs-and-dairy' | 'vegetables' | 'pulses' | 'cereals' | 'nuts' | 'fruit' | 'rest';
export type CookedKingdom = 'animal' | 'plant';

const groups: Record<CookedFamily, CookedGroup> = {
  beef: 'meat', veal: 'meat', lamb: 'meat', pork: 'meat', game: 'meat', offal: 'offal', chicken: 'poultry', turkey: 'poultry', 'other-poultry': 'poultry',
  sausages: 'sausages', fish: 'fish', crustaceans: 'shellfish', molluscs: 'shellfish', eggs: 'eggs-and-dairy', dairy: 'eggs-and-dairy',
  'leafy-greens': 'vegetables', cabbages: 'vegetables', roots: 'vegetables', potatoes: 'vegetables', 'starchy-tubers': 'vegetables', squashes: 'vegetables',
  'pods-and-fresh-seeds': 'vegetables', onions: 'vegetables', sweetcorn: 'vegetables', 'fruit-vegetables': 'vegetables', stalks: 'vegetables',
  mushrooms: 'vegetables', 'sprouted-seeds': 'vegetables', 'other-vegetables': 'vegetables', pulses: 'pulses', soya: 'pulses', 'nuts-and-seeds': 'nuts',
  rice: 'cereals', pasta: 'cereals', grains: 'cereals', 'breakfast-cereals': 'cereals', flours: 'cereals', fruit: 'fruit', 'dried-fruit': 'fruit',
  'herbs-and-spices': 'rest', fats: 'rest', liquids: 'rest', other: 'rest',
};
const animals = new Set<CookedGroup>(['meat', 'poultry', 'offal', 'fish', 'shellfish', 'sausages', 'eggs-and-dairy']);

export function cookedGroup(family: CookedFamily): CookedGroup {
  return groups[family];
}

export function cookedKingdom(family: CookedFamily): CookedKingdom {
  return animals.has(groups[family]) ? 'animal' : 'plant';
}

type Rule = readonly [RegExp, CookedFamily];

const offalWords = /\b(liver|kidneys?|heart|brains?|giblets|tongue|spleen|thymus|lungs|pancreas|gizzard|tripe|chitterlings|feet|tail|ears|jowl|stomach|variety meats|testis|tube)\b/;

const vegetableRules: readonly Rule[] = [
  [/\bsprouted\b|bean sprouts|alfalfa seeds|radish seeds|^soybeans, mature seeds, sprouted/, 'sprouted-seeds'],
  [/broccoli|brussels|cabbage|cauliflower|kohlrabi|khol/, 'cabbages'],
  [/mushroom|fungi/, 'mushrooms'],
  [/sweet ?potato|\byams?\b|\btaro\b|cassava|arrowhead|lotus root|tapioca|colocasia|waterchestnut/, 'starchy-tubers'],
  [/potato|^hash brown/, 'potatoes'],
  [/leaves|\bleaf\b|greens|\bkale\b|collards|spinach|chard|\bcress\b|watercress|amaranth|endive|escarole|lambsquarters|leafy tips|\bjute\b|purslane|\bdock\b|pokeberry|fireweed|chrysanthemum|vinespinach|butterbur|lettuce|arugula|rocket|parsley|coriander|basil|\bdill\b|radicchio|chicory|borage|dandelion|fiddlehead|sorrel|fenugreek/, 'leafy-greens'],
  [/carrot|parsnip|turnip|rutabaga|\bbeets?\b|celeriac|burdock|salsify|radish|jicama|yambean|ginger|horseradish/, 'roots'],
  [/squash|gourd|pumpkin|chayote|balsam-pear|eggplant|brinjal|cucumber|zucchini|plantain/, 'squashes'],
  [/\bbeans?\b|\bpeas?\b|cowpea|succotash|hyacinth|pigeonpea|broadbean|yardlong|podded|edamame|drumstick/, 'pods-and-fresh-seeds'],
  [/onion|leeks?\b|shallot|garlic|scallion|chives/, 'onions'],
  [/\bcorn\b|maize/, 'sweetcorn'],
  [/pepper|tomato|okra|capsicum|ladies finger|chilli|tomatillo/, 'fruit-vegetables'],
  [/asparagus|celery|artichoke|cardoon|bamboo|rhubarb|\bfern\b|nopales|fennel|shoots|stem/, 'stalks'],
];

const cerealRules: readonly Rule[] = [
  [/pasta|noodle|macaroni|spaghetti|couscous|vermicelli/, 'pasta'],
  [/flour|\bmeal\b|starch|semolina|\bbran\b|germ\b|maida|atta/, 'flours'],
  [/\brice\b/, 'rice'],
];

function firstOf(rules: readonly Rule[], name: string, otherwise: CookedFamily): CookedFamily {
  return rules.find(([pattern]) => pattern.test(name))?.[1] ?? otherwise;
}

function meatFamily(name: string): CookedFamily {
  if (offalWords.test(name)) return 'offal';
  if (/^lamb|sheep|mutton/.test(name)) return 'lamb';
  if (/^veal|calf/.test(name)) return 'veal';
  if (/^beef|^bull|^buffalo/.test(name)) return 'beef';
  if (/^pork|^pig|bacon|^ham\b/.test(name)) return 'pork';
  return 'game';
}

function poultryFamily(name: string): CookedFamily {
  if (offalWords.test(name)) return 'offal';
  if (/chicken/.test(name)) return 'chicken';
  if (/turkey/.test(name)) return 'turkey';
  return 'other-poultry';
}

function fishFamily(name: string): CookedFamily {
  if (/crustacean|crab|lobster|prawn|shrimp|crayfish/.test(name)) return 'crustaceans';
  if (/mollusk|clam|oyster|squid|octopus|mussel|scallop|cuttlefish|conch|snail|abalone|whelk/.test(name)) return 'molluscs';
  return 'fish';
}

const dairyOrEgg = (name: string): CookedFamily => (/\begg/.test(name) ? 'eggs' : 'dairy');
const fruitFamily = (name: string): CookedFamily =>
  /juice|nectar/.test(name) ? 'liquids' : /dried|dehydrated|raisins|prunes|dates/.test(name) ? 'dried-fruit' : /plantain/.test(name) ? 'starchy-tubers' : /^olives/.test(name) ? 'other-vegetables' : 'fruit';
const pulseFamily = (name: string): CookedFamily =>
  /soy|tofu|tempeh|natto|miso/.test(name) ? (/sauce|milk/.test(name) ? 'liquids' : 'soya') : /peanut|ground nut/.test(name) ? 'nuts-and-seeds' : 'pulses';

const byGroup: Record<string, (name: string) => CookedFamily> = {
  'Dairy and egg products': dairyOrEgg, 'Milk and Milk Products': dairyOrEgg, 'Egg and Egg Products': () => 'eggs',
  'Spices and herbs': () => 'herbs-and-spices', 'Fats and oils': () => 'fats', 'Edible Oils and Fats': () => 'fats',
  Poultry: poultryFamily, Pork: meatFamily, Beef: meatFamily, 'Lamb, veal and game': meatFamily, 'Animal Meat': meatFamily,
  'Sausages and luncheon meats': () => 'sausages', 'Fish and shellfish': fishFamily, 'Marine Fish': fishFamily, 'Marine Shellfish': fishFamily,
  'Marine Mollusks': () => 'molluscs', 'Fresh Water Fish and Shellfish': fishFamily,
  'Breakfast cereals': () => 'breakfast-cereals', 'Fruits and juices': fruitFamily, Fruits: fruitFamily,
  Vegetables: (name) => firstOf(vegetableRules, name, 'other-vegetables'), 'Other Vegetables': (name) => firstOf(vegetableRules, name, 'other-vegetables'),
  'Green Leafy Vegetables': (name) => (/cabbage|brussels|broccoli|cauliflower/.test(name) && !/collard/.test(name) ? 'cabbages' : 'leafy-greens'),
  'Roots and Tubers': (name) => firstOf(vegetableRules, name, 'roots'), Mushrooms: () => 'mushrooms',
  'Condiments and Spices': (name) => (/garlic|onion/.test(name) ? 'onions' : /chillies, green/.test(name) ? 'fruit-vegetables' : /leaves/.test(name) ? 'leafy-greens' : 'herbs-and-spices'),
  'Nuts and seeds': () => 'nuts-and-seeds', 'Nuts and Oil Seeds': (name) => (/soy/.test(name) ? 'soya' : 'nuts-and-seeds'),
  Legumes: pulseFamily, 'Grain Legumes': pulseFamily,
  'Cereal grains and pasta': (name) => firstOf(cerealRules, name, 'grains'),
  'Cereals and Millets': (name) => (/maize, tender/.test(name) ? 'sweetcorn' : firstOf(cerealRules, name, 'grains')),
  Beverages: () => 'liquids', 'Soups, sauces and gravies': () => 'liquids',
};

/** The family of a food, from its table's own group and its name; `other` where neither says. */
export function cookedFamily(food: Pick<Food, 'group' | 'name'>): CookedFamily {
  return byGroup[food.group]?.(food.name.toLowerCase()) ?? 'other';
}
