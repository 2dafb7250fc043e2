/* even.c: places that even an arrangement out.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/even.h"

#include "panel/tolerance.h"

#define NEAREST 8 /* beyond these a pair is not what the maker is looking at */
#define APART 1.0 /* mm: two pieces at one place are no pair, and one on the line has no opposite */

/* The `n` of `others` nearest to `p`, nearest first; at most NEAREST. Returns how many. */
static guint
pick_nearest (const PpPoint *others,
              guint          n,
              PpPoint        p,
              PpPoint       *picked)
{
  guint count = 0;

  for (guint i = 0; i < n; i++)
    {
      double distance = pp_point_distance (others[i], p);
      guint at = count;

      while (at > 0 && pp_point_distance (picked[at - 1], p) > distance)
        at--;
      if (at == NEAREST)
        continue;
      count = MIN (count + 1, NEAREST);
      for (guint j = count - 1; j > at; j--)
        picked[j] = picked[j - 1];
      picked[at] = others[i];
    }
  return count;
}

/* Takes the candidate if it is nearer to `p` than the best so far. */
static void
consider (PpEven     *best,
          double     *least,
          PpPoint     p,
          PpEvenKind  kind,
          PpPoint     at,
          PpPoint     a,
          PpPoint     b)
{
  double distance = pp_point_distance (at, p);

  if (distance > *least - (best->kind != PP_EVEN_NONE ? PP_TIE : 0))
    return;
  *best = (PpEven) { kind, at, a, b };
  *least = distance;
}

static PpPoint
onward (PpPoint a,
        PpPoint b)
{
  return (PpPoint) { 2 * b.x - a.x, 2 * b.y - a.y };
}

static void
consider_pairs (PpEven        *best,
                double        *least,
                PpPoint        p,
                const PpPoint *near,
                guint          n)
{
  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n; j++)
      {
        PpPoint a = near[i], b = near[j];

        if (pp_point_distance (a, b) < APART)
          continue;
        consider (best, least, p, PP_EVEN_BETWEEN, (PpPoint) { (a.x + b.x) / 2, (a.y + b.y) / 2 },
                  a, b);
        consider (best, least, p, PP_EVEN_ONWARD, onward (a, b), a, b);
        consider (best, least, p, PP_EVEN_ONWARD, onward (b, a), b, a);
      }
}

PpEven
pp_even_find (const PpPoint *others,
              guint          n,
              PpPoint        p,
              double         middle,
              double         reach)
{
  PpEven best = { PP_EVEN_NONE, p, p, p };
  PpPoint near[NEAREST];
  double least = reach;

  g_return_val_if_fail (others != NULL || n == 0, best);

  consider_pairs (&best, &least, p, near, pick_nearest (others, n, p, near));
  for (guint i = 0; i < n; i++)
    if (fabs (others[i].x - middle) >= APART)
      consider (&best, &least, p, PP_EVEN_OPPOSITE,
                (PpPoint) { 2 * middle - others[i].x, others[i].y }, others[i], others[i]);
  if (best.kind == PP_EVEN_NONE)
    consider (&best, &least, p, PP_EVEN_MIDDLE, (PpPoint) { middle, p.y }, p, p);
  return best;
}
