// The sentences to fit to, as scripts/fit/reader-program.ts writes them to INPUT: numbers only, no text.
#pragma once
#include "settings.h"

typedef struct { int row, grams; const int *gram; } Form;                 // a word as written: its row of the table, its pieces
typedef struct { int form, tag, signs; const int *sign; } Token;
typedef struct { int watched, length; Token *token; } Sentence;
static struct { int words, signs, buckets, forms, sentences; Form *form; Sentence *sentence; const float *vectors; } data;

static void readInput(const char *name) {
  FILE *file = fopen(name, "rb");
  if (!file) stop("INPUT cannot be opened");
  fseek(file, 0, SEEK_END);
  size_t count = (size_t)ftell(file) / sizeof(int);
  rewind(file);
  int *at = malloc(count * sizeof(int));
  if (!at || fread(at, sizeof(int), count, file) != count) stop("INPUT cannot be read");
  fclose(file);
  const int *end = at + count;
  if (count < 8 || at[0] != MAGIC || at[1] != TAGS || at[2] != WORD_WIDTH) stop("INPUT is no input of this program, or has other tags or word vectors");
  data.words = at[3]; data.signs = at[4]; data.buckets = at[5]; data.forms = at[6]; data.sentences = at[7];
  at += 8;
  data.form = calloc(data.forms, sizeof(Form));
  for (int i = 0; i < data.forms; i++) {
    data.form[i] = (Form){ at[0], at[1], at + 2 };
    at += 2 + at[1];
  }
  data.sentence = calloc(data.sentences, sizeof(Sentence));
  for (int i = 0; i < data.sentences; i++) {
    Sentence *s = &data.sentence[i];
    *s = (Sentence){ at[0], at[1], calloc(at[1], sizeof(Token)) };
    at += 2;
    if (s->length < 1 || s->length > MOST_TOKENS) stop("a sentence of INPUT is empty or too long");
    for (int t = 0; t < s->length; t++) {
      s->token[t] = (Token){ at[0], at[1], at[2], at + 3 };
      if (at[2] > MOST_SIGNS) stop("a word of INPUT has too many signs");
      at += 3 + at[2];
    }
  }
  data.vectors = (const float *)at;
  if (at + (size_t)data.words * WORD_WIDTH != end) stop("INPUT is too short or too long");
}
