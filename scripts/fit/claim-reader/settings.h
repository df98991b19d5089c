// Sizes, settings and small things that every part uses.
#pragma once
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#ifndef TAGS
#define TAGS 27
#endif
enum {
  LANES = 16,                                            // numbers in one vector of the machine; widths are multiples of it
  TAGS_PADDED = (TAGS + LANES - 1) / LANES * LANES,
  WORD_WIDTH = 100, SIGN_WIDTH = 28, GRAM_WIDTH = 32, INPUT_WIDTH = WORD_WIDTH + SIGN_WIDTH + GRAM_WIDTH,
  MOST_LAYERS = 4, MOST_TOKENS = 600, MOST_SIGNS = 64,   // bounds of a sentence and of a word
  MOST_BATCH = 64, MOST_ROWS = 8000,                     // bounds of a batch: sentences, words
  WARM_UP = 200, POOL = 32,                              // steps until the full rate; batches sorted by length together
  MAGIC = 0x4d4c4331,
};
typedef float Vector __attribute__((vector_size(LANES * 4), aligned(4)));

static struct {
  int hidden, layers, epochs, seed;      // `hidden` numbers of state a direction
  int batch, averaged;                   // sentences a batch; last epochs whose weights are averaged
  float rate;                            // greatest step of Adam
  float dropInput, dropOutput;           // shares of inputs and of outputs of a layer that are left out at random while fitting
  float dropWord, dropSign;              // shares of words taken as unknown, and of signs left out
  float clip;                            // greatest length of a batch's gradient
} set = { 64, 2, 14, 1, 16, 4, 0.002f, 0.3f, 0.3f, 0.1f, 0.1f, 5 };

static void stop(const char *why) { fprintf(stderr, "claim-reader: %s\n", why); exit(1); }

static float *zeros(size_t n) {
  size_t bytes = (n * sizeof(float) + 63) / 64 * 64;
  float *made = aligned_alloc(64, bytes);
  if (!made) stop("not enough memory");
  return memset(made, 0, bytes);
}

// xorshift64 (G. Marsaglia, 2003): repeatable chance.
static uint64_t chance;
static uint32_t random32(void) { chance ^= chance << 13; chance ^= chance >> 7; chance ^= chance << 17; return chance >> 32; }
static float random01(void) { return (random32() >> 8) * (1.0f / 16777216); }
static void seedChance(int seed) {
  chance = 88172645463325252ull ^ (uint64_t)seed * 0x9E3779B97F4A7C15ull;
  for (int i = 0; i < 20; i++) random32();
}
