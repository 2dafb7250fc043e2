/* path-kept.c: what is known of the screens along a path of the wire while it hardly moves.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whatever is moved on the panel moves the hung wire by a hair. It then meets the same sides of the
 * same outlines, in other places, and what lies between two of these is covered as it was. So the
 * sides are kept that come within SLACK of a leg, for as long as it has not moved farther; and each
 * answer of an outline with how far about the place it holds. Neither alters what is found.
 */
#include "check/path-kept.h"

/* mm. Were it more, more sides would be asked for nothing; were it less, all more often. */
#define SLACK 0.5

/* Answers from before to one that was asked for, beyond which all are given anew. */
#define MOST_ANSWERS 3

typedef struct
{
  PpPoint  at;
  double   safe; /* mm about it */
  gboolean covered;
} Answer;

struct _PpPathKept
{
  PpLeg      legs[PP_MOST_LEGS];  /* as they lay when sides were found */
  gboolean   stays[PP_MOST_LEGS]; /* since the path before */
  GPtrArray *known[PP_MOST_LEGS]; /* PpKnown, in the order in which they were taken */
  guint      next;                /* of the path before, where the next screen is looked for */
};

static void
known_free (gpointer data)
{
  PpKnown *self = data;

  g_array_unref (self->sides);
  g_array_unref (self->answers);
  g_free (self);
}

PpPathKept *
pp_path_kept_new (void)
{
  PpPathKept *self = g_new0 (PpPathKept, 1);

  for (guint i = 0; i < PP_MOST_LEGS; i++)
    self->known[i] = g_ptr_array_new_with_free_func (known_free);
  return self;
}

void
pp_path_kept_free (PpPathKept *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < PP_MOST_LEGS; i++)
    g_ptr_array_unref (self->known[i]);
  g_free (self);
}

/* Its ends by so little that no line beside it has moved farther than SLACK. */
static gboolean
has_hardly_moved (const PpLeg *now,
                  const PpLeg *before)
{
  PpPoint a = pp_leg_point (now, now->length, 0), b = pp_leg_point (before, before->length, 0);

  return pp_point_distance (now->from, before->from) <= SLACK / 4
         && pp_point_distance (a, b) <= SLACK / 4;
}

void
pp_path_kept_begin (PpPathKept       *self,
                    const PpPathKept *previous,
                    guint             leg,
                    const PpLeg      *at)
{
  self->stays[leg] = previous != NULL && has_hardly_moved (at, &previous->legs[leg]);
  self->legs[leg] = self->stays[leg] ? previous->legs[leg] : *at;
  self->next = 0;
}

/* That of an outline, most often the next one. */
static const PpKnown *
find_known (PpPathKept      *self,
            GPtrArray       *known,
            const PpOutline *outline)
{
  for (guint i = 0; i < known->len; i++)
    {
      guint at = (self->next + i) % known->len;
      const PpKnown *other = g_ptr_array_index (known, at);

      if (other->outline != outline)
        continue;
      self->next = at + 1;
      return other;
    }
  return NULL;
}

PpKnown *
pp_path_kept_take (PpPathKept       *self,
                   const PpPathKept *previous,
                   guint             leg,
                   const PpCover    *cover,
                   const double     *asides,
                   guint             n_lines)
{
  const PpLeg *at = &self->legs[leg];
  const PpKnown *before = previous == NULL ? NULL
                          : find_known (self, previous->known[leg], cover->outline);
  PpKnown *known = g_new0 (PpKnown, 1);

  known->outline = cover->outline;
  known->shared = before != NULL && before->answers->len <= MOST_ANSWERS * before->n_asked;
  known->answers = known->shared ? g_array_ref (before->answers)
                                 : g_array_new (FALSE, FALSE, sizeof (Answer));
  known->n_before = known->answers->len;
  known->sides = before != NULL && self->stays[leg]
                     ? g_array_ref (before->sides)
                     : pp_cover_find_sides (cover, at->from, at->direction, at->length, asides,
                                            n_lines, SLACK);
  g_ptr_array_add (self->known[leg], known);
  return known;
}

/* How far about a place the same holds as there. */
static double
find_safe (const PpCover *cover,
           PpPoint        p)
{
  double from_border = pp_cover_distance (cover, p, cover->drawn_in + SLACK);

  return fmax (fabs (from_border - cover->drawn_in) - 2 * PP_TIE, 0);
}

static const Answer *
find_answer (PpKnown *self,
             PpPoint  p)
{
  guint n = self->n_before;

  for (guint i = 0, at = self->next; i < n; i++, at++)
    {
      const Answer *answer = &g_array_index (self->answers, Answer, at < n ? at : at - n);
      double dx = p.x - answer->at.x, dy = p.y - answer->at.y;

      if (dx * dx + dy * dy > answer->safe * answer->safe)
        continue;
      self->next = at < n ? at + 1 : at - n + 1;
      return answer;
    }
  return NULL;
}

/* The path before keeps its own. */
static void
stop_sharing (PpKnown *self)
{
  GArray *answers = g_array_copy (self->answers);

  g_array_unref (self->answers);
  self->answers = answers;
  self->shared = FALSE;
}

gboolean
pp_known_contains (PpKnown       *self,
                   const PpCover *cover,
                   PpPoint        p)
{
  const Answer *known = find_answer (self, p);
  Answer answer;

  self->n_asked++;
  if (known != NULL)
    return known->covered;
  answer = (Answer) { p, find_safe (cover, p), pp_cover_contains (cover, p) };
  if (self->shared)
    stop_sharing (self);
  g_array_append_val (self->answers, answer);
  return answer.covered;
}
