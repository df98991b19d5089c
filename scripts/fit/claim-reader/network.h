// The network from words to scores of tags, and its gradients back. A batch lies with its longest sentence first: word t of
// sentence b is row from[t] + b, and active[t] sentences have a word t.
#pragma once
#include "products.h"
#include "weights.h"

static struct { const Sentence *sentence[MOST_BATCH]; int sentences, words, rows, from[MOST_TOKENS], active[MOST_TOKENS]; } batch;
static struct {
  float *input, *inputMask, *inputGradient, *scores, *scoresGradient;     // at each row
  float *gates[MOST_LAYERS][2], *hidden[MOST_LAYERS][2], *cell[MOST_LAYERS][2], *cellTanh[MOST_LAYERS][2];
  float *output[MOST_LAYERS], *outputMask[MOST_LAYERS], *outputGradient[MOST_LAYERS];
  float *gatesGradient, *hiddenGradient, *cellGradient, *hiddenBefore, *transposed;
  int *wordRow; unsigned char *signDropped;
} at;

static void makeRoom(void) {
  const size_t R = MOST_ROWS, H = set.hidden;
  at.input = zeros(R * INPUT_WIDTH); at.inputMask = zeros(R * INPUT_WIDTH); at.inputGradient = zeros(R * INPUT_WIDTH);
  at.scores = zeros(R * TAGS_PADDED); at.scoresGradient = zeros(R * TAGS_PADDED);
  at.gatesGradient = zeros(R * 4 * H); at.hiddenGradient = zeros(R * H); at.cellGradient = zeros(R * H); at.hiddenBefore = zeros(R * H);
  at.transposed = zeros((size_t)(INPUT_WIDTH + 2 * H) * (4 * H + TAGS_PADDED));
  at.wordRow = malloc(R * sizeof(int)); at.signDropped = calloc(R, MOST_SIGNS);
  for (int l = 0; l < set.layers; l++) {
    at.output[l] = zeros(R * 2 * H); at.outputMask[l] = zeros(R * 2 * H); at.outputGradient[l] = zeros(R * 2 * H);
    for (int d = 0; d < 2; d++) { at.gates[l][d] = zeros(R * 4 * H); at.hidden[l][d] = zeros(R * H); at.cell[l][d] = zeros(R * H); at.cellTanh[l][d] = zeros(R * H); }
  }
}

static int longerFirst(const void *a, const void *b) { return (*(const Sentence *const *)b)->length - (*(const Sentence *const *)a)->length; }

static void layBatch(const Sentence *const *sentences, int count) {
  memcpy(batch.sentence, sentences, count * sizeof *sentences);
  qsort(batch.sentence, count, sizeof *batch.sentence, longerFirst);
  batch.sentences = count; batch.words = batch.sentence[0]->length; batch.rows = 0;
  for (int t = 0, active = count; t < batch.words; t++) {
    while (batch.sentence[active - 1]->length <= t) active--;
    batch.from[t] = batch.rows; batch.active[t] = active; batch.rows += active;
  }
  if (batch.rows > MOST_ROWS) stop("a batch has too many words");
}

// What each row is given; while fitting, parts are left out at random and the rest made larger in turn.
static void dropOut(float *values, float *mask, size_t count, float share) {
  const float kept = 1 / (1 - share);
  for (size_t i = 0; i < count; i++) { mask[i] = random01() < share ? 0 : kept; values[i] *= mask[i]; }
}

static void addRow(float *to, const float *row, int width, float times) { for (int j = 0; j < width; j++) to[j] += times * row[j]; }

static void gatherInput(int fitting) {
  for (int t = 0; t < batch.words; t++) for (int b = 0; b < batch.active[t]; b++) {
    const int row = batch.from[t] + b;
    const Token *token = &batch.sentence[b]->token[t];
    const Form *form = &data.form[token->form];
    float *x = at.input + (size_t)row * INPUT_WIDTH;
    at.wordRow[row] = fitting && random01() < set.dropWord ? data.words : form->row;
    memcpy(x, valuesOf(place.words) + (size_t)at.wordRow[row] * WORD_WIDTH, WORD_WIDTH * sizeof(float));
    memset(x + WORD_WIDTH, 0, (SIGN_WIDTH + GRAM_WIDTH) * sizeof(float));
    for (int k = 0; k < token->signs; k++) {
      const int dropped = at.signDropped[row * MOST_SIGNS + k] = fitting && random01() < set.dropSign;
      if (!dropped) addRow(x + WORD_WIDTH, valuesOf(place.signs) + (size_t)token->sign[k] * SIGN_WIDTH, SIGN_WIDTH, 1);
    }
    for (int k = 0; k < form->grams; k++)
      addRow(x + WORD_WIDTH + SIGN_WIDTH, valuesOf(place.grams) + (size_t)form->gram[k] * GRAM_WIDTH, GRAM_WIDTH, 1 / sqrtf(form->grams));
  }
  if (fitting) dropOut(at.input, at.inputMask, (size_t)batch.rows * INPUT_WIDTH, set.dropInput);
}

// Long short-term memory. Way 0 runs from the first word, way 1 from the last; `before` is the word that it comes from.
typedef struct { int t, before, active, carried; } Moment;                  // sentences with word t, and those with a word before it
static Moment momentOf(int d, int step) {
  const int t = d ? batch.words - 1 - step : step, before = d ? t + 1 : t - 1;
  return (Moment){ t, before, batch.active[t], step == 0 ? 0 : d ? batch.active[before] : batch.active[t] };
}
static inline float squash(float x) { return 1 / (1 + expf(-x)); }
static inline float tanhOf(float x) { return 2 * squash(2 * x) - 1; }

static void runLayer(int l, int d, const float *in) {
  const int H = set.hidden, D = inputWidth(l);
  const Way way = place.way[l][d];
  float *gates = at.gates[l][d], *hidden = at.hidden[l][d], *cells = at.cell[l][d];
  for (int r = 0; r < batch.rows; r++) memcpy(gates + (size_t)r * 4 * H, valuesOf(way.bias), 4 * H * sizeof(float));
  multiply((Product){ gates, 4 * H, in, D, 1, valuesOf(way.input), 4 * H, D }, batch.rows, 4 * H);
  for (int step = 0; step < batch.words; step++) {
    const Moment now = momentOf(d, step);
    const size_t from = batch.from[now.t], past = now.carried ? batch.from[now.before] : 0;
    if (now.carried) multiply((Product){ gates + from * 4 * H, 4 * H, hidden + past * H, H, 1, valuesOf(way.state), 4 * H, H }, now.carried, 4 * H);
    for (int i = 0; i < now.active; i++) {
      float *g = gates + (from + i) * 4 * H, *h = hidden + (from + i) * H, *c = cells + (from + i) * H, *tc = at.cellTanh[l][d] + (from + i) * H;
      const float *pastCell = cells + (past + i) * H;
      for (int j = 0; j < 2 * H; j++) g[j] = squash(g[j]);
      for (int j = 3 * H; j < 4 * H; j++) g[j] = squash(g[j]);
      for (int j = 2 * H; j < 3 * H; j++) g[j] = tanhOf(g[j]);
      for (int j = 0; j < H; j++) c[j] = g[j] * g[2 * H + j];
      if (i < now.carried) for (int j = 0; j < H; j++) c[j] += g[H + j] * pastCell[j];
      for (int j = 0; j < H; j++) { tc[j] = tanhOf(c[j]); h[j] = g[3 * H + j] * tc[j]; }
    }
  }
}

// Gradients of one way of a layer, from those of its output; adds what falls to its input.
static void runLayerBack(int l, int d, const float *in, float *inGradient) {
  const int H = set.hidden, D = inputWidth(l), R = batch.rows;
  const Way way = place.way[l][d];
  memset(at.hiddenGradient, 0, (size_t)R * H * sizeof(float));
  memset(at.cellGradient, 0, (size_t)R * H * sizeof(float));
  memset(at.hiddenBefore, 0, (size_t)R * H * sizeof(float));
  transpose(at.transposed, valuesOf(way.state), H, 4 * H);
  for (int step = batch.words - 1; step >= 0; step--) {
    const Moment now = momentOf(d, step);
    const size_t from = batch.from[now.t], past = now.carried ? batch.from[now.before] : 0;
    for (int i = 0; i < now.active; i++) {
      const size_t r = from + i;
      const float *g = at.gates[l][d] + r * 4 * H, *tc = at.cellTanh[l][d] + r * H, *dOut = at.outputGradient[l] + r * 2 * H + d * H;
      float *dg = at.gatesGradient + r * 4 * H, *dh = at.hiddenGradient + r * H, *dc = at.cellGradient + r * H;
      for (int j = 0; j < H; j++) {
        const float let_in = g[j], new_ = g[2 * H + j], out = g[3 * H + j], h = dh[j] + dOut[j];
        const float c = dc[j] + h * out * (1 - tc[j] * tc[j]);
        dg[3 * H + j] = h * tc[j] * out * (1 - out);
        dg[j] = c * new_ * let_in * (1 - let_in);
        dg[2 * H + j] = c * let_in * (1 - new_ * new_);
        dc[j] = c;
      }
      if (i >= now.carried) { memset(dg + H, 0, H * sizeof(float)); continue; }
      const float *pastCell = at.cell[l][d] + (past + i) * H;
      float *pastCellGradient = at.cellGradient + (past + i) * H;
      for (int j = 0; j < H; j++) { const float f = g[H + j]; dg[H + j] = dc[j] * pastCell[j] * f * (1 - f); pastCellGradient[j] = dc[j] * f; }
      memcpy(at.hiddenBefore + r * H, at.hidden[l][d] + (past + i) * H, H * sizeof(float));
    }
    if (now.carried) multiply((Product){ at.hiddenGradient + past * H, H, at.gatesGradient + from * 4 * H, 4 * H, 1, at.transposed, H, 4 * H }, now.carried, H);
  }
  multiply((Product){ gradientOf(way.input), 4 * H, in, 1, D, at.gatesGradient, 4 * H, R }, D, 4 * H);
  multiply((Product){ gradientOf(way.state), 4 * H, at.hiddenBefore, 1, H, at.gatesGradient, 4 * H, R }, H, 4 * H);
  for (int r = 0; r < R; r++) addRow(gradientOf(way.bias), at.gatesGradient + (size_t)r * 4 * H, 4 * H, 1);
  transpose(at.transposed, valuesOf(way.input), D, 4 * H);
  multiply((Product){ inGradient, D, at.gatesGradient, 4 * H, 1, at.transposed, D, 4 * H }, R, D);
}

// Score of every tag at every row of the batch.
static void forward(int fitting) {
  const int H = set.hidden;
  const float *in = at.input;
  gatherInput(fitting);
  for (int l = 0; l < set.layers; l++) {
    for (int d = 0; d < 2; d++) {
      runLayer(l, d, in);
      for (int r = 0; r < batch.rows; r++) memcpy(at.output[l] + (size_t)r * 2 * H + d * H, at.hidden[l][d] + (size_t)r * H, H * sizeof(float));
    }
    if (fitting) dropOut(at.output[l], at.outputMask[l], (size_t)batch.rows * 2 * H, set.dropOutput);
    in = at.output[l];
  }
  for (int r = 0; r < batch.rows; r++) memcpy(at.scores + (size_t)r * TAGS_PADDED, valuesOf(place.outBias), TAGS_PADDED * sizeof(float));
  multiply((Product){ at.scores, TAGS_PADDED, in, 2 * H, 1, valuesOf(place.out), TAGS_PADDED, 2 * H }, batch.rows, TAGS_PADDED);
}

static void scatterInput(void) {
  for (int t = 0; t < batch.words; t++) for (int b = 0; b < batch.active[t]; b++) {
    const int row = batch.from[t] + b;
    const Token *token = &batch.sentence[b]->token[t];
    const Form *form = &data.form[token->form];
    float *dx = at.inputGradient + (size_t)row * INPUT_WIDTH;
    const float *mask = at.inputMask + (size_t)row * INPUT_WIDTH;
    for (int j = 0; j < INPUT_WIDTH; j++) dx[j] *= mask[j];
    addRow(touch(place.words, at.wordRow[row]), dx, WORD_WIDTH, 1);
    for (int k = 0; k < token->signs; k++)
      if (!at.signDropped[row * MOST_SIGNS + k]) addRow(touch(place.signs, token->sign[k]), dx + WORD_WIDTH, SIGN_WIDTH, 1);
    for (int k = 0; k < form->grams; k++) addRow(touch(place.grams, form->gram[k]), dx + WORD_WIDTH + SIGN_WIDTH, GRAM_WIDTH, 1 / sqrtf(form->grams));
  }
}

// Gradients of all weights from those of the scores; only after forward(fitting).
static void backward(void) {
  const int H = set.hidden, R = batch.rows, top = set.layers - 1;
  multiply((Product){ gradientOf(place.out), TAGS_PADDED, at.output[top], 1, 2 * H, at.scoresGradient, TAGS_PADDED, R }, 2 * H, TAGS_PADDED);
  for (int r = 0; r < R; r++) addRow(gradientOf(place.outBias), at.scoresGradient + (size_t)r * TAGS_PADDED, TAGS_PADDED, 1);
  transpose(at.transposed, valuesOf(place.out), 2 * H, TAGS_PADDED);
  memset(at.outputGradient[top], 0, (size_t)R * 2 * H * sizeof(float));
  multiply((Product){ at.outputGradient[top], 2 * H, at.scoresGradient, TAGS_PADDED, 1, at.transposed, 2 * H, TAGS_PADDED }, R, 2 * H);
  for (int l = top; l >= 0; l--) {
    for (size_t i = 0; i < (size_t)R * 2 * H; i++) at.outputGradient[l][i] *= at.outputMask[l][i];
    const float *in = l ? at.output[l - 1] : at.input;
    float *inGradient = l ? at.outputGradient[l - 1] : at.inputGradient;
    memset(inGradient, 0, (size_t)R * inputWidth(l) * sizeof(float));
    for (int d = 0; d < 2; d++) runLayerBack(l, d, in, inGradient);
  }
  scatterInput();
}
