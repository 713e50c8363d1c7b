/* The yardstick: daily single sine with horizontal cutoff, as plain C.
 *
 * argv:   input file, output file
 * input:  int64 stations, int64 days per station, double lower, double upper (°C),
 *         double tmin[stations * days], double tmax[stations * days]
 * output: double degree_days[stations * days]
 * stdout: milliseconds of processor time of the second of two passes
 */
#define _POSIX_C_SOURCE 199309L
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static const double PI = 3.14159265358979323846;

static double sine_heat_above(double tmin, double tmax, double threshold) {
  if (tmax <= threshold) return 0;
  double mean = (tmax + tmin) / 2;
  if (tmin >= threshold) return mean - threshold;
  double amplitude = (tmax - tmin) / 2;
  double sine = fmax(-1, fmin(1, (threshold - mean) / amplitude));
  return ((mean - threshold) * (PI / 2 - asin(sine)) + amplitude * sqrt(1 - sine * sine)) / PI;
}

static void daily_degree_days(int64_t days, const double *tmin, const double *tmax, double lower, double upper, double *out) {
  for (int64_t i = 0; i < days; i++) {
    if (!(tmin[i] <= tmax[i])) {
      out[i] = NAN;
      continue;
    }
    double heat = sine_heat_above(tmin[i], tmax[i], lower);
    if (tmax[i] > upper) heat -= sine_heat_above(tmin[i], tmax[i], upper);
    out[i] = heat > 0 ? heat : 0;
  }
}

/* Of processor time. */
static double milliseconds(void) {
  struct timespec now;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return now.tv_sec * 1e3 + now.tv_nsec / 1e6;
}

int main(int argc, char **argv) {
  int64_t size[2];
  double threshold[2];
  FILE *in = argc == 3 ? fopen(argv[1], "rb") : NULL;
  if (!in || fread(size, sizeof size, 1, in) != 1 || fread(threshold, sizeof threshold, 1, in) != 1) return 1;
  size_t n = (size_t)(size[0] * size[1]);
  double *tmin = malloc(n * sizeof *tmin), *tmax = malloc(n * sizeof *tmax), *out = malloc(n * sizeof *out);
  if (!tmin || !tmax || !out || fread(tmin, sizeof *tmin, n, in) != n || fread(tmax, sizeof *tmax, n, in) != n) return 1;
  fclose(in);

  double taken = 0;
  for (int pass = 0; pass < 2; pass++) {
    double begun = milliseconds();
    for (int64_t s = 0; s < size[0]; s++) {
      int64_t at = s * size[1];
      daily_degree_days(size[1], tmin + at, tmax + at, threshold[0], threshold[1], out + at);
    }
    taken = milliseconds() - begun;
  }
  printf("%.3f\n", taken);

  FILE *to = fopen(argv[2], "wb");
  return !to || fwrite(out, sizeof *out, n, to) != n || fclose(to) != 0;
}
