/* margin-rows.c: the rows and lines of the margin, and what is done with them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/margin-private.h"

#include "desk/finding-acts.h"
#include "desk/finding-line.h"
#include "desk/finding-row.h"
#include "desk/keyed-box.h"
#include "desk/lines.h"

static void
show_me_cb (GtkWidget *row,
            PpMargin  *self)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  int index = pp_finding_acts_find (findings, gtk_widget_get_name (row));

  if (index >= 0)
    pp_margin_show_me (self, (guint) index);
}

static void
put_right_cb (GtkWidget *row,
              PpMargin  *self)
{
  pp_finding_acts_put_right (row, self->document);
}

static void
quiet_cb (GtkWidget *row,
          gboolean   quiet,
          PpMargin  *self)
{
  pp_finding_acts_quiet (row, self->document, quiet);
}

static void
light_cb (GtkWidget *row,
          gboolean   is_on,
          PpMargin  *self)
{
  GPtrArray *findings = pp_document_get_findings (self->document);

  pp_margin_light (self, is_on ? pp_finding_acts_find (findings, gtk_widget_get_name (row)) : -1);
}

static GtkWidget *
make_row (const char *key,
          gpointer    data)
{
  GtkWidget *row = pp_finding_row_new ();

  g_signal_connect (row, "show-me", G_CALLBACK (show_me_cb), data);
  g_signal_connect (row, "light", G_CALLBACK (light_cb), data);
  g_signal_connect (row, "put-right", G_CALLBACK (put_right_cb), data);
  g_signal_connect (row, "quiet", G_CALLBACK (quiet_cb), data);
  return row;
}

static void
open_cb (GtkWidget *line,
         PpMargin  *self)
{
  g_autofree char *key = g_strdup (gtk_widget_get_name (line));

  pp_margin_open_key (self, key);
}

static GtkWidget *
make_line (const char *key,
           gpointer    data)
{
  GtkWidget *line = pp_finding_line_new ();

  g_signal_connect (line, "open", G_CALLBACK (open_cb), data);
  return line;
}

static void
sync_open (PpMargin  *self,
           GPtrArray *findings,
           GPtrArray *keys)
{
  g_autoptr (GPtrArray) open = g_ptr_array_new ();

  for (guint i = 0; i < keys->len; i++)
    if (pp_folding_is_open (self->folding, g_ptr_array_index (keys, i)))
      g_ptr_array_add (open, g_ptr_array_index (keys, i));
  pp_keyed_box_sync (self->open, open, make_row, self);
  for (guint i = 0; i < keys->len; i++)
    {
      GtkWidget *row = pp_keyed_box_find (self->open, g_ptr_array_index (keys, i));

      if (row != NULL)
        pp_finding_row_set (PP_FINDING_ROW (row), g_ptr_array_index (findings, i), i + 1,
                            findings->len);
    }
}

/* The lines are made only while they can be seen. */
static void
sync_lines (PpMargin  *self,
            GPtrArray *findings,
            GPtrArray *keys)
{
  g_autoptr (GPtrArray) folded = g_ptr_array_new ();
  gboolean is_unfolded = gtk_toggle_button_get_active (self->folded);

  for (guint i = 0; is_unfolded && i < keys->len; i++)
    if (!pp_folding_is_open (self->folding, g_ptr_array_index (keys, i)))
      g_ptr_array_add (folded, g_ptr_array_index (keys, i));
  pp_keyed_box_sync (self->lines, folded, make_line, self);
  for (guint i = 0; is_unfolded && i < keys->len; i++)
    {
      GtkWidget *line = pp_keyed_box_find (self->lines, g_ptr_array_index (keys, i));

      if (line != NULL)
        pp_finding_line_set (PP_FINDING_LINE (line), g_ptr_array_index (findings, i), i + 1);
    }
}

static void
sync_quiet (PpMargin *self)
{
  GPtrArray *known = pp_document_get_known (self->document);
  g_autoptr (GPtrArray) keys = pp_finding_keys (known);

  if (!gtk_toggle_button_get_active (self->known))
    g_ptr_array_set_size (keys, 0);
  pp_keyed_box_sync (self->quiet, keys, make_row, self);
  for (guint i = 0; i < keys->len; i++)
    pp_finding_row_set (PP_FINDING_ROW (pp_keyed_box_find (self->quiet,
                                                           g_ptr_array_index (keys, i))),
                        g_ptr_array_index (known, i), 0, 0);
}

void
pp_margin_sync (PpMargin *self)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  g_autoptr (GPtrArray) keys = pp_finding_keys (findings);

  pp_folding_fold (self->folding, findings, keys);
  sync_open (self, findings, keys);
  sync_lines (self, findings, keys);
  sync_quiet (self);
}

void
pp_margin_clear_rows (PpMargin *self)
{
  pp_lines_clear (self->open);
  pp_lines_clear (self->lines);
  pp_lines_clear (self->quiet);
}
