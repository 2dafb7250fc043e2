/* said.c: what was said of each placement, to be said again where nothing has changed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/said.h"

struct _PpSaid
{
  guint      n;                /* placements */
  GPtrArray *list;             /* PpFinding, in the order in which they were said */
  guint     *first[PP_N_SAID]; /* where in it those of a placement begin; n + 1 long */
};

PpSaid *
pp_said_new (guint n)
{
  PpSaid *self = g_new0 (PpSaid, 1);

  self->n = n;
  for (guint kind = 0; kind < PP_N_SAID; kind++)
    self->first[kind] = g_new0 (guint, n + 1);
  return self;
}

void
pp_said_free (PpSaid *self)
{
  if (self == NULL)
    return;
  for (guint kind = 0; kind < PP_N_SAID; kind++)
    g_free (self->first[kind]);
  g_clear_pointer (&self->list, g_ptr_array_unref);
  g_free (self);
}

gboolean
pp_findings_say_again (PpFindings *findings,
                       PpSaidKind  kind,
                       guint       index)
{
  const PpSaid *before = findings->before;

  if (findings->said != NULL)
    findings->said->first[kind][index] = findings->list->len;
  if (before == NULL || !findings->unchanged[index])
    return FALSE;
  for (guint i = before->first[kind][index]; i < before->first[kind][index + 1]; i++)
    g_ptr_array_add (findings->list, pp_finding_ref (g_ptr_array_index (before->list, i)));
  return TRUE;
}

void
pp_findings_end_kind (PpFindings *findings,
                      PpSaidKind  kind)
{
  if (findings->said != NULL)
    findings->said->first[kind][findings->said->n] = findings->list->len;
}

static gpointer
copy_finding (gconstpointer finding,
              gpointer      data)
{
  return pp_finding_ref (finding);
}

void
pp_findings_keep_said (PpFindings *findings)
{
  if (findings->said != NULL)
    findings->said->list = g_ptr_array_copy (findings->list, copy_finding, NULL);
}
