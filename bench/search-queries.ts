/** What people type into a food picker: whole names, beginnings, several words, slips of the finger. */
export const searchQueries: readonly string[] = `
kale|spinach|chard|broccoli|brocolli|tenderstem|cauliflower|cabage|savoy cabbage|red cabbage|brussel sprouts|pak choi|bok choy|rocket|arugula|watercress|lettuce|romaine|little gem|endive
tomato|tomatoe|cherry tomatos|plum tomatoes tinned|chopped tomatoes|sun dried tomatoes|tomato puree|passata|onion|red onion|spring onion|scallion|shallot|leek|garlic|garlic powder|ginger|root ginger|turmeric|tumeric
carrot|carrots raw|parsnip|swede|turnip|beetroot|cooked beetroot|celeriac|celery|fennel|potato|new potatoes|sweet potato|sweet potatoe|yam|cassava|plantain|squash|butternut|buternut squash
pumpkin|courgette|zucchini|aubergine|eggplant|pepper|red pepper|green pepper|chilli|jalapeno|cucumber|radish|asparagus|artichoke|green beans|runner beans|peas|frozen peas|mangetout|sweetcorn
mushroom|chestnut mushrooms|shiitake|oyster mushroom|porcini|avocado|avacado|olives|black olives|capers|lemon|lemon juice|lime|orange|orange juice|grapefruit|clementine|apple|bramley|pear
banana|bananna|grapes|strawberry|strawberies|raspberries|blueberries|blackberry|cranberries dried|cherries|plum|prunes|apricot|dried apricots|peach|nectarine|mango|pineapple|papaya|kiwi
pomegranate|fig|dates|medjool|raisins|sultanas|coconut|coconut milk|coconut cream|desiccated coconut|almonds|ground almonds|almond milk|walnuts|hazelnut|cashews|pistachio|brazil nuts|pecan|peanuts
peanut butter|tahini|sesame seeds|sunflower seeds|pumpkin seeds|pumkin seeds|flaxseed|linseed|chia|chia seeds|hemp seeds|poppy seeds|pine nuts|chestnuts|lentils|red lentils|puy lentils|green lentils cooked|chickpeas|chick peas
chickpeas canned|kidney beans|kidny beans|black beans|cannellini|butter beans|haricot|borlotti|pinto|broad beans|edamame|tofu|firm tofu|tempeh|miso|soya milk|soy sauce|tamari|hummus|houmous
rice|brown rice|basmati|wild rice|quinoa|qinoa|bulgur|couscous|pearl barley|oats|porridge oats|oatmeal|oat milk|millet|buckwheat|polenta|pasta|wholewheat pasta|spaghetti|spagetti
egg noodles|rice noodles|flour|plain flour|self raising flour|wholemeal flour|gram flour|cornflour|bread|wholemeal bread|sourdough|rye bread|pitta|tortilla|naan|crackers|butter|unsalted butter|ghee|margarine
olive oil|rapeseed oil|sunflower oil|sesame oil|coconut oil|milk|semi skimmed milk|skimmed milk|double cream|single cream|creme fraiche|sour cream|yoghurt|greek yogurt|natural yogurt|kefir|cheddar|chedar|parmesan|mozzarella
feta|halloumi|goats cheese|cottage cheese|cream cheese|ricotta|blue cheese|paneer|egg|eggs|egg white|chicken|chicken breast|chiken breast|chicken thigh|roast chicken|turkey|turkey mince|duck|beef
beef mince|steak|sirloin|stewing beef|lamb|lamb leg|lamb mince|pork|pork loin|bacon|ham|sausages|chorizo|liver|chicken liver|salmon|smoked salmon|tinned salmon|tuna|tinned tuna
sardines|mackerel|smoked mackerel|cod|haddock|trout|sea bass|prawns|mussels|crab|squid|anchovies|salt|black pepper|paprika|smoked paprika|cumin|ground coriander|coriander|cinnamon|nutmeg
`.split(/[|\n]/).map((q) => q.trim()).filter((q) => q !== '');
