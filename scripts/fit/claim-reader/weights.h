// Weights: one flat row of numbers; those of the three large tables first, whose rows a batch touches seldom.
#pragma once
#include "sentences.h"

typedef struct { size_t at; int rows, width, firstRow; } Table;
typedef struct { Table input, state, bias; } Way;                         // gates in the order in, forget, new, out
static struct { Table words, signs, grams, out, outBias, follow, first, last; Way way[MOST_LAYERS][2]; size_t dense, size; int sparseRows; } place;
static struct { float *value, *gradient, *mean, *square, *sum; } weight;  // with Adam's two running means and the sum to average
static int inputWidth(int layer) { return layer ? 2 * set.hidden : INPUT_WIDTH; }
static float *valuesOf(Table t) { return weight.value + t.at; }
static float *gradientOf(Table t) { return weight.gradient + t.at; }

static Table placed(int rows, int width) {
  Table t = { place.size, rows, width, place.sparseRows };
  place.size += (size_t)rows * width;
  return t;
}
static Table placedSparse(int rows, int width) { Table t = placed(rows, width); place.sparseRows += rows; return t; }

static void fillEvenly(Table t, int columns, float most) {
  for (int r = 0; r < t.rows; r++) for (int j = 0; j < columns; j++) valuesOf(t)[(size_t)r * t.width + j] = (2 * random01() - 1) * most;
}

// Starting weights by the rule of X. Glorot and Y. Bengio (2010); the forget gates begin open (bias 1).
static void makeWeights(void) {
  const int H = set.hidden;
  place.words = placedSparse(data.words + 1, WORD_WIDTH);                 // the last row stands for unknown words
  place.signs = placedSparse(data.signs, SIGN_WIDTH);
  place.grams = placedSparse(data.buckets, GRAM_WIDTH);
  place.dense = place.size;
  for (int l = 0; l < set.layers; l++) for (int d = 0; d < 2; d++)
    place.way[l][d] = (Way){ placed(inputWidth(l), 4 * H), placed(H, 4 * H), placed(1, 4 * H) };
  place.out = placed(2 * H, TAGS_PADDED); place.outBias = placed(1, TAGS_PADDED);
  place.follow = placed(TAGS, TAGS); place.first = placed(1, TAGS); place.last = placed(1, TAGS);
  float **parts[] = { &weight.value, &weight.gradient, &weight.mean, &weight.square, &weight.sum };
  for (int i = 0; i < 5; i++) *parts[i] = zeros(place.size);
  memcpy(valuesOf(place.words), data.vectors, (size_t)data.words * WORD_WIDTH * sizeof(float));
  fillEvenly(place.signs, SIGN_WIDTH, 0.15f);
  fillEvenly(place.grams, GRAM_WIDTH, 0.15f);
  for (int l = 0; l < set.layers; l++) for (int d = 0; d < 2; d++) {
    fillEvenly(place.way[l][d].input, 4 * H, sqrtf(6.0f / (inputWidth(l) + H)));
    fillEvenly(place.way[l][d].state, 4 * H, sqrtf(6.0f / (2 * H)));
    for (int j = H; j < 2 * H; j++) valuesOf(place.way[l][d].bias)[j] = 1;
  }
  fillEvenly(place.out, TAGS, sqrtf(6.0f / (2 * H + TAGS)));
}

// Rows of the large tables that this batch has touched: only they have a gradient, and only they are stepped.
typedef struct { int firstRow; size_t at; int width; } TouchedRow;
static struct { unsigned char *marked; TouchedRow *row; int count; } touched;

static float *touch(Table t, int row) {
  const size_t from = t.at + (size_t)row * t.width;
  if (!touched.marked) { touched.marked = calloc(place.sparseRows, 1); touched.row = malloc(place.sparseRows * sizeof(TouchedRow)); }
  if (!touched.marked[t.firstRow + row]) {
    touched.marked[t.firstRow + row] = 1;
    touched.row[touched.count++] = (TouchedRow){ t.firstRow + row, from, t.width };
  }
  return weight.gradient + from;
}

static void forgetGradients(void) {
  memset(weight.gradient + place.dense, 0, (place.size - place.dense) * sizeof(float));
  for (int i = 0; i < touched.count; i++) {
    memset(weight.gradient + touched.row[i].at, 0, touched.row[i].width * sizeof(float));
    touched.marked[touched.row[i].firstRow] = 0;
  }
  touched.count = 0;
}

static float squares(size_t from, size_t count) {
  float sum = 0;
  for (size_t i = from; i < from + count; i++) sum += weight.gradient[i] * weight.gradient[i];
  return sum;
}

// One step of Adam for weights in a row; `scale` keeps the length of the whole gradient under the clip (R. Pascanu et al., 2013).
typedef struct { float rate, scale, meanWhole, squareWhole; } Step;
static void stepRange(size_t from, size_t count, Step s) {
  for (size_t i = from; i < from + count; i++) {
    const float g = weight.gradient[i] * s.scale;
    weight.mean[i] = 0.9f * weight.mean[i] + 0.1f * g;
    weight.square[i] = 0.999f * weight.square[i] + 0.001f * g * g;
    weight.value[i] -= s.rate * weight.mean[i] * s.meanWhole / (sqrtf(weight.square[i] * s.squareWhole) + 1e-8f);
  }
}

// The rate rises over the first steps, then falls along a line to a twentieth.
static void stepWeights(long number, long all) {
  double length = squares(place.dense, place.size - place.dense);
  for (int i = 0; i < touched.count; i++) length += squares(touched.row[i].at, touched.row[i].width);
  length = sqrt(length);
  float rate = set.rate * (1 - 0.95f * (float)number / all);
  if (number < WARM_UP) rate *= (float)number / WARM_UP;
  const Step s = { rate, length > set.clip ? set.clip / length : 1, 1 / (1 - powf(0.9f, number)), 1 / (1 - powf(0.999f, number)) };
  stepRange(place.dense, place.size - place.dense, s);
  for (int i = 0; i < touched.count; i++) stepRange(touched.row[i].at, touched.row[i].width, s);
}
