/* finding-acts.c: what is done with a finding where it stands in a row.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/finding-acts.h"

#include "desk/folding.h"
#include "panel/edit.h"
#include "panel/i18n.h"

int
pp_finding_acts_find (GPtrArray  *findings,
                      const char *key)
{
  g_autoptr (GPtrArray) keys = pp_finding_keys (findings);
  guint index;

  if (!g_ptr_array_find_with_equal_func (keys, key, g_str_equal, &index))
    return -1;
  return (int) index;
}

void
pp_finding_acts_put_right (GtkWidget  *row,
                           PpDocument *document)
{
  GPtrArray *findings = pp_document_get_findings (document);
  int index = pp_finding_acts_find (findings, gtk_widget_get_name (row));
  const PpFinding *finding;

  if (index < 0)
    return;
  finding = g_ptr_array_index (findings, (guint) index);
  gtk_widget_activate_action (row, "win.put-right", "(s^as)", finding->code, finding->about);
}

void
pp_finding_acts_quiet (GtkWidget  *row,
                       PpDocument *document,
                       gboolean    quiet)
{
  GPtrArray *findings = quiet ? pp_document_get_findings (document)
                              : pp_document_get_known (document);
  int index = pp_finding_acts_find (findings, gtk_widget_get_name (row));
  const PpFinding *finding;
  GError *error = NULL;
  PpPanel *next;

  if (index < 0)
    return;
  finding = g_ptr_array_index (findings, (guint) index);
  next = pp_edit_set_quiet (pp_document_get_panel (document), finding->code, finding->about,
                            quiet, &error);
  pp_document_take (document, next, error,
                    quiet ? _("Keep a finding quiet") : _("Let a finding speak"), NULL);
}
