// Products of matrices: to[m][n] += a[m][k] b[k][n]; a(i, k) lies at i * byRow + k * byColumn; n is a multiple of LANES.
#pragma once
#include "settings.h"

typedef struct { float *to; int toWidth; const float *a; int byRow, byColumn; const float *b; int bWidth, inner; } Product;

// A block of `rows` rows and `vectors` vectors kept in registers; inlined with constants, so that the loops unroll.
static inline __attribute__((always_inline)) void block(const int rows, const int vectors, Product p) {
  Vector sum[6][4];
  for (int i = 0; i < rows; i++) for (int v = 0; v < vectors; v++) sum[i][v] = *(Vector *)(p.to + i * p.toWidth + v * LANES);
  for (int k = 0; k < p.inner; k++) {
    Vector b[4];
    for (int v = 0; v < vectors; v++) b[v] = *(const Vector *)(p.b + (size_t)k * p.bWidth + v * LANES);
    for (int i = 0; i < rows; i++) {
      float a = p.a[(size_t)i * p.byRow + (size_t)k * p.byColumn];
      for (int v = 0; v < vectors; v++) sum[i][v] += a * b[v];
    }
  }
  for (int i = 0; i < rows; i++) for (int v = 0; v < vectors; v++) *(Vector *)(p.to + i * p.toWidth + v * LANES) = sum[i][v];
}

static inline __attribute__((always_inline)) void column(const int vectors, int rows, Product p) {
  for (; rows >= 6; rows -= 6) { block(6, vectors, p); p.to += (size_t)6 * p.toWidth; p.a += (size_t)6 * p.byRow; }
  switch (rows) {
    case 5: block(5, vectors, p); break;
    case 4: block(4, vectors, p); break;
    case 3: block(3, vectors, p); break;
    case 2: block(2, vectors, p); break;
    case 1: block(1, vectors, p); break;
  }
}

static void multiply(Product p, int rows, int columns) {
  for (; columns >= 4 * LANES; columns -= 4 * LANES) { column(4, rows, p); p.to += 4 * LANES; p.b += 4 * LANES; }
  for (; columns >= 2 * LANES; columns -= 2 * LANES) { column(2, rows, p); p.to += 2 * LANES; p.b += 2 * LANES; }
  for (; columns >= LANES; columns -= LANES) { column(1, rows, p); p.to += LANES; p.b += LANES; }
}

// to[column][row] = from[row][column], in squares that stay in the cache.
static void transpose(float *to, const float *from, int rows, int columns) {
  for (int i = 0; i < rows; i += LANES) for (int j = 0; j < columns; j += LANES)
    for (int x = i; x < i + LANES && x < rows; x++) for (int y = j; y < j + LANES && y < columns; y++)
      to[(size_t)y * rows + x] = from[(size_t)x * columns + y];
}
