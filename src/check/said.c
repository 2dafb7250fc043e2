/* said.c: what was said of each placement, to be said again where nothing has changed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is said again is so in the order of before. So when all is sorted it is in the order to
 * which it was sorted then, and the little that is new is put between.
 */
#include "check/said.h"

struct _PpSaid
{
  guint      n[PP_N_SAID];     /* placements, or pieces */
  GPtrArray *list;             /* PpFinding, borrowed, in the order in which they were said */
  guint     *first[PP_N_SAID]; /* where in it those of each begin; n + 1 long */
  guint     *sorted;           /* places in it, worst first */
  GArray    *again;            /* Again, rising by either place, until it is sorted */
};

/* A stretch of the list of before. */
typedef struct
{
  guint before; /* its place there */
  guint now;
  guint n;
} Again;

PpSaid *
pp_said_new (guint n_placements,
             guint n_pieces)
{
  PpSaid *self = g_new0 (PpSaid, 1);

  for (guint kind = 0; kind < PP_N_SAID; kind++)
    {
      self->n[kind] = kind == PP_SAID_OF_STOCK ? n_pieces : n_placements;
      self->first[kind] = g_new0 (guint, self->n[kind] + 1);
    }
  self->list = g_ptr_array_new ();
  self->again = g_array_new (FALSE, FALSE, sizeof (Again));
  return self;
}

void
pp_said_free (PpSaid *self)
{
  if (self == NULL)
    return;
  for (guint kind = 0; kind < PP_N_SAID; kind++)
    g_free (self->first[kind]);
  g_ptr_array_unref (self->list);
  g_clear_pointer (&self->again, g_array_unref);
  g_free (self->sorted);
  g_free (self);
}

void
pp_findings_say_anew (PpFindings *findings,
                      PpSaidKind  kind,
                      guint       index)
{
  if (findings->said != NULL)
    findings->said->first[kind][index] = findings->list->len;
}

/* One more of them, at the end of the list as it is now. */
static void
add_again (GArray *again,
           guint   before,
           guint   now)
{
  Again *last = again->len > 0 ? &g_array_index (again, Again, again->len - 1) : NULL;
  Again next = { before, now, 1 };

  if (last != NULL && last->before + last->n == before && last->now + last->n == now)
    last->n++;
  else
    g_array_append_val (again, next);
}

void
pp_findings_repeat (PpFindings *findings,
                    PpSaidKind  kind,
                    guint       index)
{
  const PpSaid *before = findings->before;

  pp_findings_say_anew (findings, kind, index);
  for (guint i = before->first[kind][index]; i < before->first[kind][index + 1]; i++)
    {
      add_again (findings->said->again, i, findings->list->len);
      g_ptr_array_add (findings->list, pp_finding_ref (g_ptr_array_index (before->list, i)));
    }
}

gboolean
pp_findings_say_again (PpFindings *findings,
                       PpSaidKind  kind,
                       guint       index)
{
  if (findings->before == NULL || !findings->unchanged[index])
    {
      pp_findings_say_anew (findings, kind, index);
      return FALSE;
    }
  pp_findings_repeat (findings, kind, index);
  return TRUE;
}

void
pp_findings_end_kind (PpFindings *findings,
                      PpSaidKind  kind)
{
  if (findings->said != NULL)
    findings->said->first[kind][findings->said->n[kind]] = findings->list->len;
}

/* By place in the list where they are equal. */
static int
compare_places (gconstpointer a,
                gconstpointer b,
                gpointer      list)
{
  guint p = *(const guint *) a, q = *(const guint *) b;
  int order = pp_finding_compare (&g_ptr_array_index ((GPtrArray *) list, p),
                                  &g_ptr_array_index ((GPtrArray *) list, q));

  return order != 0 ? order : p < q ? -1 : p > q;
}

/* Places of those that were said again, in the order to which they were sorted before, then of the
 * others, in the list's; gives how many are the first. (transfer full) */
static guint *
part_places (const PpFindings *findings,
             guint            *n_again)
{
  const PpSaid *before = findings->before;
  GArray *again = findings->said->again;
  guint *places = g_new (guint, findings->list->len + 1), n = 0; /* one at least: not NULL */
  g_autofree guint *now = g_new0 (guint, before != NULL ? before->list->len : 0); /* from 1 */

  for (guint k = 0; k < again->len; k++)
    for (guint i = 0; i < g_array_index (again, Again, k).n; i++)
      now[g_array_index (again, Again, k).before + i] = g_array_index (again, Again, k).now + i + 1;
  for (guint i = 0; again->len > 0 && i < before->list->len; i++)
    if (now[before->sorted[i]] > 0)
      places[n++] = now[before->sorted[i]] - 1;
  *n_again = n;
  for (guint i = 0, k = 0; i < findings->list->len; i++)
    if (k < again->len && g_array_index (again, Again, k).now == i)
      i += g_array_index (again, Again, k++).n - 1;
    else
      places[n++] = i;
  return places;
}

/* (transfer full) */
static guint *
merge_places (const guint *a,
              guint        n_a,
              const guint *b,
              guint        n_b,
              GPtrArray   *list)
{
  guint *merged = g_new (guint, n_a + n_b), i = 0, k = 0;

  for (guint n = 0; n < n_a + n_b; n++)
    if (k == n_b || (i < n_a && compare_places (&a[i], &b[k], list) < 0))
      merged[n] = a[i++];
    else
      merged[n] = b[k++];
  return merged;
}

void
pp_findings_sort (PpFindings *findings)
{
  PpSaid *said = findings->said;
  guint n = findings->list->len, n_again;
  g_autofree guint *places = part_places (findings, &n_again);

  g_qsort_with_data (places + n_again, (int) (n - n_again), sizeof *places, compare_places,
                     findings->list);
  said->sorted = merge_places (places, n_again, places + n_again, n - n_again, findings->list);
  g_ptr_array_extend (said->list, findings->list, NULL, NULL);
  for (guint i = 0; i < n; i++)
    findings->list->pdata[i] = g_ptr_array_index (said->list, said->sorted[i]);
  g_clear_pointer (&said->again, g_array_unref);
}
