// The conditional random field over the tags of a sentence (J. Lafferty, A. McCallum and F. Pereira, 2001): a row of tags scores the
// sum of its tags at their words, of each tag after the one before it, of the first and of the last. Sums over all rows run forward
// and backward (L. Rabiner, 1989), each word's scaled to 1; the best row is A. Viterbi's (1967).
#pragma once
#include "network.h"

static struct {
  float follow[TAGS][TAGS_PADDED], followTransposed[TAGS][TAGS_PADDED];       // exp of the scores of one tag after another
  float here[MOST_TOKENS][TAGS_PADDED];                                   // exp of each tag's score less the greatest at its word
  float ahead[MOST_TOKENS][TAGS_PADDED], behind[MOST_TOKENS][TAGS_PADDED];
} field;

static void readyField(void) {
  memset(&field, 0, sizeof field.follow + sizeof field.followTransposed);
  for (int a = 0; a < TAGS; a++) for (int b = 0; b < TAGS; b++)
    field.follow[a][b] = field.followTransposed[b][a] = expf(valuesOf(place.follow)[a * TAGS + b]);
}

static const float lowest = -1e30f;                                        // below every score

static float tagScore(int b, int t, int tag) {
  const float ends = (t == 0 ? valuesOf(place.first)[tag] : 0) + (t == batch.sentence[b]->length - 1 ? valuesOf(place.last)[tag] : 0);
  return at.scores[(size_t)(batch.from[t] + b) * TAGS_PADDED + tag] + ends;
}

// Scales a row to sum 1 and returns what the sum was.
static float scaled(float *row) {
  float sum = 0;
  for (int k = 0; k < TAGS; k++) sum += row[k];
  for (int k = 0; k < TAGS_PADDED; k++) row[k] *= 1 / sum;
  return sum;
}

// Minus the logarithm of the chance of the right tags; leaves `here` and `ahead` for the gradient.
static double sentenceLoss(int b) {
  const Sentence *s = batch.sentence[b];
  double all = 0, right = 0;
  for (int t = 0; t < s->length; t++) {
    float score[TAGS], most = lowest, sum[TAGS_PADDED] = { 0 };
    for (int k = 0; k < TAGS; k++) { score[k] = tagScore(b, t, k); if (score[k] > most) most = score[k]; }
    for (int k = 0; k < TAGS; k++) field.here[t][k] = expf(score[k] - most);
    right += score[s->token[t].tag] + (t ? valuesOf(place.follow)[s->token[t - 1].tag * TAGS + s->token[t].tag] : 0);
    for (int k = 0; k < TAGS_PADDED; k++) sum[k] = t == 0;
    if (t) {
      memset(sum, 0, sizeof sum);
      for (int a = 0; a < TAGS; a++) addRow(sum, field.follow[a], TAGS_PADDED, field.ahead[t - 1][a]);
    }
    for (int k = 0; k < TAGS_PADDED; k++) field.ahead[t][k] = sum[k] * field.here[t][k];
    all += most + log(scaled(field.ahead[t]));
  }
  return all - right;
}

// Gradient of the loss times `share`, after sentenceLoss: the chance of each tag, and of each tag after another, less the right ones.
static void sentenceGradient(int b, float share) {
  const Sentence *s = batch.sentence[b];
  const int last = s->length - 1;
  for (int k = 0; k < TAGS_PADDED; k++) field.behind[last][k] = k < TAGS;
  for (int t = last; t >= 0; t--) {
    if (t < last) {
      float after[TAGS_PADDED], sum[TAGS_PADDED] = { 0 }, whole = 0;
      for (int k = 0; k < TAGS_PADDED; k++) after[k] = field.here[t + 1][k] * field.behind[t + 1][k];
      for (int c = 0; c < TAGS; c++) addRow(sum, field.followTransposed[c], TAGS_PADDED, after[c]);
      for (int k = 0; k < TAGS; k++) whole += field.ahead[t][k] * sum[k];
      for (int a = 0; a < TAGS; a++) {
        float *g = gradientOf(place.follow) + a * TAGS;
        for (int c = 0; c < TAGS; c++) g[c] += field.ahead[t][a] * (share / whole) * field.follow[a][c] * after[c];
      }
      gradientOf(place.follow)[s->token[t].tag * TAGS + s->token[t + 1].tag] -= share;
      memcpy(field.behind[t], sum, sizeof sum);
      scaled(field.behind[t]);
    }
    float *g = at.scoresGradient + (size_t)(batch.from[t] + b) * TAGS_PADDED, whole = 0;
    for (int k = 0; k < TAGS; k++) whole += field.ahead[t][k] * field.behind[t][k];
    for (int k = 0; k < TAGS_PADDED; k++) g[k] = field.ahead[t][k] * field.behind[t][k] * (share / whole);
    g[s->token[t].tag] -= share;
    if (t == 0) addRow(gradientOf(place.first), g, TAGS, 1);
    if (t == last) addRow(gradientOf(place.last), g, TAGS, 1);
  }
}

static void bestTags(int b, int *tags) {
  static float best[MOST_TOKENS][TAGS];
  static int cameFrom[MOST_TOKENS][TAGS];
  const int length = batch.sentence[b]->length;
  for (int t = 0; t < length; t++) for (int k = 0; k < TAGS; k++) {
    float most = t ? lowest : 0;
    for (int a = 0; t && a < TAGS; a++) {
      const float score = best[t - 1][a] + valuesOf(place.follow)[a * TAGS + k];
      if (score > most) { most = score; cameFrom[t][k] = a; }
    }
    best[t][k] = most + tagScore(b, t, k);
  }
  int tag = 0;
  for (int k = 1; k < TAGS; k++) if (best[length - 1][k] > best[length - 1][tag]) tag = k;
  for (int t = length - 1; t >= 0; t--) { tags[t] = tag; tag = cameFrom[t][tag]; }
}
