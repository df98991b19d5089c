// Fits the reader of claims: a network that tags every word of a sentence "no claim", "a claim of class c begins" or "it goes on".
//
//   claim-reader fit INPUT OUTPUT [setting=value ...]   fits to the sentences of INPUT and writes the weights to OUTPUT
//   claim-reader check                                  compares gradients with differences of the loss on a small random case
//
// A word is given as its word vector, the sum of the vectors of its signs, and the sum of the vectors of its character pieces
// divided by the root of their count. Layers of long short-term memory (S. Hochreiter and J. Schmidhuber, 1997; with the forget
// gate of F. Gers, J. Schmidhuber and F. Cummins, 2000) run over the sentence both ways, and a linear-chain conditional random
// field (J. Lafferty, A. McCallum and F. Pereira, 2001) weighs whole rows of tags. Fitted by Adam (D. Kingma and J. Ba, 2015)
// with dropout (N. Srivastava et al., 2014); the result is the mean of the weights of the last epochs (B. Polyak and
// A. Juditsky, 1992).
//
#include "field.h"

// Loss of a batch, summed over its sentences; its weights' gradient is that of the mean.
static double lossAndGradient(const Sentence *const *sentences, int count) {
  double loss = 0;
  layBatch(sentences, count);
  forward(1);
  readyField();
  forgetGradients();
  for (int b = 0; b < count; b++) {
    loss += sentenceLoss(b);
    sentenceGradient(b, 1.0f / count);
  }
  backward();
  return loss;
}

// ---- watching: sentences left out of the fit show how well unseen ones are read
static int classOf(int tag) { return (tag + 1) / 2; }
static int begins(const int *tags, int t) { return tags[t] > 0 && (tags[t] % 2 || t == 0 || classOf(tags[t - 1]) != classOf(tags[t])); }
static int endOf(const int *tags, int t, int length) {
  int end = t;
  while (end + 1 < length && tags[end + 1] == 2 * classOf(tags[t])) end++;
  return end;
}

static void watch(const char *when) {
  int sentences = 0, words = 0, right = 0, wanted = 0, found = 0, hits = 0;
  double loss = 0;
  readyField();
  for (int i = 0; i < data.sentences; i++) {
    const Sentence *s = &data.sentence[i];
    int guess[MOST_TOKENS], gold[MOST_TOKENS];
    if (!s->watched) continue;
    layBatch(&s, 1);
    forward(0);
    loss += sentenceLoss(0);
    bestTags(0, guess);
    for (int t = 0; t < s->length; t++) { gold[t] = s->token[t].tag; right += guess[t] == gold[t]; }
    for (int t = 0; t < s->length; t++) {
      wanted += begins(gold, t);
      found += begins(guess, t);
      hits += begins(gold, t) && begins(guess, t) && classOf(gold[t]) == classOf(guess[t]) && endOf(gold, t, s->length) == endOf(guess, t, s->length);
    }
    sentences++;
    words += s->length;
  }
  if (sentences)
    printf("%s: watched %d sentences, right tags %.4f, loss %.3f a sentence, F1 of exact stretches %.4f\n",
      when, sentences, (double)right / words, loss / sentences, 2.0 * hits / (wanted + found));
}

// ---- fitting
static double seconds(void) { struct timespec t; clock_gettime(CLOCK_MONOTONIC, &t); return t.tv_sec + t.tv_nsec * 1e-9; }

static void shuffle(const Sentence **list, int count) {
  for (int i = count - 1; i > 0; i--) { const int j = random32() % (i + 1); const Sentence *kept = list[i]; list[i] = list[j]; list[j] = kept; }
}

// Batches of sentences of like length, in an order of chance.
static void order(const Sentence **list, int count, int *batches, int batchCount) {
  shuffle(list, count);
  for (int i = 0; i < count; i += set.batch * POOL) qsort(list + i, i + set.batch * POOL < count ? set.batch * POOL : count - i, sizeof *list, longerFirst);
  for (int i = 0; i < batchCount; i++) batches[i] = i;
  for (int i = batchCount - 1; i > 0; i--) { const int j = random32() % (i + 1), kept = batches[i]; batches[i] = batches[j]; batches[j] = kept; }
}

static void fit(void) {
  const Sentence **list = malloc(data.sentences * sizeof *list);
  int count = 0, averaged = 0;
  long words = 0, steps = 0;
  for (int i = 0; i < data.sentences; i++) if (!data.sentence[i].watched) { list[count++] = &data.sentence[i]; words += data.sentence[i].length; }
  if (!count) stop("INPUT has no sentence to fit to");
  const int batchCount = (count + set.batch - 1) / set.batch;
  int *batches = malloc(batchCount * sizeof *batches);
  printf("%d sentences, %ld words; %zu weights, %zu of them outside the large tables\n", count, words, place.size, place.size - place.dense);
  for (int epoch = 0; epoch < set.epochs; epoch++) {
    const double began = seconds();
    double loss = 0;
    char when[40];
    order(list, count, batches, batchCount);
    for (int i = 0; i < batchCount; i++) {
      const int from = batches[i] * set.batch;
      loss += lossAndGradient(list + from, from + set.batch < count ? set.batch : count - from);
      stepWeights(++steps, (long)batchCount * set.epochs);
      if (epoch < set.epochs - set.averaged || (i != batchCount - 1 && i != batchCount / 2)) continue;
      for (size_t k = 0; k < place.size; k++) weight.sum[k] += weight.value[k];
      averaged++;
    }
    printf("epoch %d: loss %.3f a sentence, %.1f s\n", epoch + 1, loss / count, seconds() - began);
    snprintf(when, sizeof when, "epoch %d", epoch + 1);
    watch(when);
  }
  for (size_t k = 0; averaged && k < place.size; k++) weight.value[k] = weight.sum[k] / averaged;
  watch("averaged");
}

static void writeTable(FILE *file, Table t, int columns) {
  for (int r = 0; r < t.rows; r++) fwrite(valuesOf(t) + (size_t)r * t.width, sizeof(float), columns, file);
}

static void writeWeights(const char *name) {
  const int header[] = { MAGIC, TAGS, data.words, data.signs, data.buckets, set.hidden, set.layers };
  FILE *file = fopen(name, "wb");
  if (!file) stop("OUTPUT cannot be written");
  fwrite(header, sizeof header, 1, file);
  writeTable(file, place.words, WORD_WIDTH); writeTable(file, place.signs, SIGN_WIDTH); writeTable(file, place.grams, GRAM_WIDTH);
  for (int l = 0; l < set.layers; l++) for (int d = 0; d < 2; d++) {
    const Way way = place.way[l][d];
    writeTable(file, way.input, 4 * set.hidden); writeTable(file, way.state, 4 * set.hidden); writeTable(file, way.bias, 4 * set.hidden);
  }
  writeTable(file, place.out, TAGS); writeTable(file, place.outBias, TAGS);
  writeTable(file, place.follow, TAGS); writeTable(file, place.first, TAGS); writeTable(file, place.last, TAGS);
  if (fclose(file)) stop("OUTPUT cannot be written");
}

// ---- check: along a few directions through each table the loss must change as the gradient says
static void makeSmallCase(void) {
  enum { FORMS = 9, WORDS = 6, SIGNS = 5, BUCKETS = 16, SENTENCES = 3, LENGTH = 5 };
  static int gram[FORMS * 3], sign[SENTENCES * LENGTH * 2];
  static float vectors[WORDS * WORD_WIDTH];
  data.words = WORDS; data.signs = SIGNS; data.buckets = BUCKETS; data.forms = FORMS; data.sentences = SENTENCES; data.vectors = vectors;
  data.form = calloc(FORMS, sizeof(Form));
  data.sentence = calloc(SENTENCES, sizeof(Sentence));
  for (int i = 0; i < WORDS * WORD_WIDTH; i++) vectors[i] = random01() - 0.5f;
  for (int i = 0; i < FORMS * 3; i++) gram[i] = random32() % BUCKETS;
  for (int i = 0; i < SENTENCES * LENGTH * 2; i++) sign[i] = random32() % SIGNS;
  for (int i = 0; i < FORMS; i++) data.form[i] = (Form){ i < WORDS ? i : WORDS, 1 + i % 3, gram + 3 * i };
  for (int i = 0; i < SENTENCES; i++) {
    data.sentence[i] = (Sentence){ 0, LENGTH - i, calloc(LENGTH, sizeof(Token)) };
    for (int t = 0; t < LENGTH; t++) data.sentence[i].token[t] = (Token){ random32() % FORMS, random32() % TAGS, random32() % 3, sign + 2 * (i * LENGTH + t) };
  }
}

static double lossWithSameChance(void) {
  const Sentence *list[] = { &data.sentence[0], &data.sentence[1], &data.sentence[2] };
  seedChance(set.seed + 1);                                               // the same words, signs and outputs are left out each time
  return lossAndGradient(list, 3) / 3;
}

// Largest relative difference in `columns` of a table from `first` on; a direction is the gradient with each part stretched at random,
// so that its slope is never small.
static double differenceOf(Table t, int first, int columns) {
  enum { TRIES = 3 };
  const size_t count = (size_t)t.rows * t.width;
  float *gradient = zeros(count), *direction = zeros(count), *kept = zeros(count);
  double worst = 0;
  lossWithSameChance();
  for (int r = 0; r < t.rows; r++) memcpy(gradient + (size_t)r * t.width + first, gradientOf(t) + (size_t)r * t.width + first, columns * sizeof(float));
  memcpy(kept, valuesOf(t), count * sizeof(float));
  for (int i = 0; i < TRIES; i++) {
    double slope = 0, length = 0, change = 0;
    for (size_t k = 0; k < count; k++) { direction[k] = gradient[k] * (0.5f + random01()); length += direction[k] * direction[k]; slope += direction[k] * gradient[k]; }
    if (length == 0) { worst = 1; break; }
    const float reach = 0.02f / sqrt(length);
    for (int side = -1; side <= 1; side += 2) {
      for (size_t k = 0; k < count; k++) valuesOf(t)[k] = kept[k] + side * reach * direction[k];
      change += side * lossWithSameChance();
    }
    memcpy(valuesOf(t), kept, count * sizeof(float));
    worst = fmax(worst, fabs(change / (2 * reach) / slope - 1));
  }
  free(gradient); free(direction); free(kept);
  return worst;
}

static int isWrong(const char *name, Table t, int first, int columns) {
  const double difference = differenceOf(t, first, columns);
  const int wrong = !(difference <= 0.01);
  if (wrong) printf("the gradient of %s is off by %.2f %%\n", name, 100 * difference);
  return wrong;
}

static int check(void) {
  int wrong = 0;
  set.hidden = 16;
  seedChance(set.seed);
  makeSmallCase();
  makeWeights();
  makeRoom();
  const struct { const char *name; Table table; } plain[] = {
    { "words", place.words }, { "signs", place.signs }, { "grams", place.grams }, { "out", place.out }, { "the bias of out", place.outBias },
    { "follow", place.follow }, { "first", place.first }, { "last", place.last },
  };
  for (size_t i = 0; i < sizeof plain / sizeof *plain; i++) wrong += isWrong(plain[i].name, plain[i].table, 0, plain[i].table.width);
  for (int l = 0; l < set.layers; l++) for (int d = 0; d < 2; d++) for (int gate = 0; gate < 4; gate++) {
    const Way way = place.way[l][d];
    const Table parts[] = { way.input, way.state, way.bias };
    for (int i = 0; i < 3; i++) {
      static const char *const partNames[] = { "input", "state", "bias" }, *const wayNames[] = { "forwards", "backwards" }, *const gateNames[] = { "in", "forget", "new", "out" };
      char name[80];
      snprintf(name, sizeof name, "gate \"%s\" of %s, layer %d %s", gateNames[gate], partNames[i], l + 1, wayNames[d]);
      wrong += isWrong(name, parts[i], gate * set.hidden, set.hidden);
    }
  }
  printf("gradients checked, %d wrong\n", wrong);
  return wrong ? 1 : 0;
}

static void readSetting(const char *text) {
  const char *value = strchr(text, '=');
  const struct { const char *name; int *whole; float *part; } known[] = {
    { "hidden", &set.hidden, 0 }, { "layers", &set.layers, 0 }, { "epochs", &set.epochs, 0 }, { "seed", &set.seed, 0 }, { "batch", &set.batch, 0 },
    { "averaged", &set.averaged, 0 }, { "rate", 0, &set.rate }, { "dropInput", 0, &set.dropInput }, { "dropOutput", 0, &set.dropOutput },
    { "dropWord", 0, &set.dropWord }, { "dropSign", 0, &set.dropSign }, { "clip", 0, &set.clip },
  };
  for (size_t i = 0; value && i < sizeof known / sizeof *known; i++) {
    if (strlen(known[i].name) != (size_t)(value - text) || strncmp(known[i].name, text, value - text)) continue;
    if (known[i].whole) *known[i].whole = atoi(value + 1);
    else *known[i].part = atof(value + 1);
    return;
  }
  fprintf(stderr, "%s: ", text);
  stop("no such setting");
}

int main(int count, char **words) {
  setvbuf(stdout, 0, _IOLBF, 0);
  if (count == 2 && !strcmp(words[1], "check")) return check();
  if (count < 4 || strcmp(words[1], "fit")) stop("use: claim-reader fit INPUT OUTPUT [setting=value ...], or claim-reader check");
  for (int i = 4; i < count; i++) readSetting(words[i]);
  if (set.layers < 1 || set.layers > MOST_LAYERS || set.hidden < LANES || set.hidden % LANES || set.batch < 1 || set.batch > MOST_BATCH)
    stop("layers, hidden (a multiple of 16) or batch out of bounds");
  seedChance(set.seed);
  readInput(words[2]);
  makeWeights();
  makeRoom();
  fit();
  writeWeights(words[3]);
  return 0;
}
