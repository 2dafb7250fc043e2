/* finding.c: what is wrong, or worth a look, in words a maker understands.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/finding.h"

#include <stdlib.h>

/* Those of the check's questions, of the glue plan and of the drawing. */
static const char codes[] =
#define PP_QUESTION(name, ...) #__VA_ARGS__ ", "
#include "check/questions.list"
#undef PP_QUESTION
    "mix-small, art-left-out";

gboolean
pp_finding_is_code (const char *code)
{
  g_auto (GStrv) all = g_strsplit (codes, ", ", -1);

  return g_strv_contains ((const char * const *) all, code);
}

const char *
pp_level_get_name (PpLevel level)
{
  switch (level)
    {
    case PP_LEVEL_FAULT:
      return "fault";
    case PP_LEVEL_CAUTION:
      return "caution";
    case PP_LEVEL_NOTE:
      return "note";
    }
  g_return_val_if_reached (NULL);
}

const char *
pp_origin_get_name (PpOrigin origin)
{
  switch (origin)
    {
    case PP_ORIGIN_OWN:
      return "own";
    case PP_ORIGIN_STANDARD:
      return "std";
    case PP_ORIGIN_PRACTICE:
      return "practice";
    }
  g_return_val_if_reached (NULL);
}

PpFinding *
pp_finding_ref (const PpFinding *self)
{
  return g_atomic_rc_box_acquire ((PpFinding *) self);
}

static void
finding_clear (gpointer data)
{
  PpFinding *self = data;

  g_free ((char *) self->text);
  g_strfreev ((char **) self->about);
}

static void
finding_unref (gpointer data)
{
  g_atomic_rc_box_release_full (data, finding_clear);
}

static int
compare_names (const void *a,
               const void *b)
{
  return g_strcmp0 (*(const char * const *) a, *(const char * const *) b);
}

char *
pp_finding_dup_name (const PpFinding *self)
{
  guint n = g_strv_length ((char **) self->about);
  g_autofree const char **ids = g_memdup2 (self->about, (n + 1) * sizeof *ids);
  g_autofree char *about = NULL;

  qsort (ids, n, sizeof *ids, compare_names);
  about = g_strjoinv (" ", (char **) ids);
  return g_strdup_printf ("%s %s", self->code, about);
}

void
pp_findings_init (PpFindings    *self,
                  const PpPanel *panel)
{
  *self = (PpFindings) { .panel = panel,
                         .list = g_ptr_array_new_with_free_func (finding_unref) };
}

void
pp_findings_clear (PpFindings *self)
{
  g_clear_pointer (&self->list, g_ptr_array_unref);
}

void
pp_findings_add (PpFindings *self,
                 PpFinding   finding,
                 char       *text)
{
  PpFinding *copy;

  g_return_if_fail (finding.about != NULL);
  copy = g_atomic_rc_box_dup (sizeof finding, &finding);
  copy->text = text;
  copy->about = (const char * const *) g_strdupv ((char **) finding.about);
  copy->quiet = finding.level != PP_LEVEL_FAULT
                && pp_panel_is_quiet (self->panel, finding.code, finding.about);
  g_ptr_array_add (self->list, copy);
}

int
pp_finding_compare (gconstpointer a,
                    gconstpointer b)
{
  const PpFinding *p = *(const PpFinding * const *) a;
  const PpFinding *q = *(const PpFinding * const *) b;

  if (p->level != q->level)
    return p->level < q->level ? -1 : 1;
  if (p->at.y < q->at.y || p->at.y > q->at.y)
    return p->at.y < q->at.y ? -1 : 1;
  return p->at.x < q->at.x ? -1 : p->at.x > q->at.x;
}
