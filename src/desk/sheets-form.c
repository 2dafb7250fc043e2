/* sheets-form.c: what to print, and on what.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/sheets-form.h"

#include "desk/choice.h"
#include "desk/drop-down.h"
#include "desk/file-words.h"
#include "desk/length-entry.h"
#include "desk/settings.h"
#include "desk/template.h"
#include "panel/i18n.h"

#define MOST_INSET 10.0 /* mm */

/* A sheet to tick. */
typedef struct
{
  const PpSheetKind *kind;
  GtkCheckButton    *tick;
  GtkLabel          *count;
  gboolean           is_blank;
} Row;

struct _PpSheetsForm
{
  GtkWidget       parent_instance;
  GArray         *rows;   /* Row, in the order of printing */
  GtkCheckButton *all;    /* of the sheets of a panel */
  GtkBox         *kinds;
  GtkBox         *blanks;
  GtkCheckButton *behind;
  GtkWidget      *inset_row;
  PpFigureEntry  *inset;
  GtkWidget      *paper_label;
  GtkDropDown    *paper;
  GtkWidget      *sides;  /* of a paper of one's own */
  PpFigureEntry  *across;
  PpFigureEntry  *down;
  GtkWidget      *ways;
  GtkCheckButton *upright;
  GtkCheckButton *sideways;
  GtkCheckButton *mono;
  gboolean        has_pieces;
};

G_DEFINE_FINAL_TYPE (PpSheetsForm, pp_sheets_form, GTK_TYPE_WIDGET)

static guint changed_signal;

static void all_toggled_cb (PpSheetsForm *self);

static gboolean
is_own_size (PpSheetsForm *self)
{
  guint n;

  pp_sheet_papers (&n);
  return gtk_drop_down_get_selected (self->paper) >= n;
}

/* Ticked, not ticked, or in between, as the sheets of a panel are. */
static void
show_all (PpSheetsForm *self)
{
  guint n = 0, n_ticked = 0;

  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);

      n += !row->is_blank;
      n_ticked += !row->is_blank && gtk_check_button_get_active (row->tick);
    }
  g_signal_handlers_block_by_func (self->all, all_toggled_cb, self);
  gtk_check_button_set_active (self->all, n_ticked == n);
  gtk_check_button_set_inconsistent (self->all, n_ticked > 0 && n_ticked < n);
  g_signal_handlers_unblock_by_func (self->all, all_toggled_cb, self);
}

/* What depends on a tick stands under it, and sleeps without it. */
static void
show_parts (PpSheetsForm *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);
      gboolean on = self->has_pieces && gtk_check_button_get_active (row->tick);

      if (g_str_equal (row->kind->id, "pattern"))
        gtk_widget_set_sensitive (GTK_WIDGET (self->behind), on);
      else if (g_str_equal (row->kind->id, "cutting"))
        gtk_widget_set_sensitive (self->inset_row, on);
    }
  gtk_widget_set_visible (self->sides, is_own_size (self));
  gtk_widget_set_visible (self->ways, !is_own_size (self));
}

/* In between, when the one has heard of it and the other has not, neither is chosen. */
static gboolean
is_sideways (PpSheetsForm *self)
{
  return !gtk_check_button_get_active (self->upright);
}

static void
keep_paper (PpSheetsForm *self)
{
  guint n, i = gtk_drop_down_get_selected (self->paper);
  const PpSheetPaper *papers = pp_sheet_papers (&n);
  char across[G_ASCII_DTOSTR_BUF_SIZE], down[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *own = NULL;

  g_ascii_dtostr (across, sizeof across, pp_figure_entry_get_value (self->across));
  g_ascii_dtostr (down, sizeof down, pp_figure_entry_get_value (self->down));
  own = g_strconcat (across, "x", down, NULL);
  pp_settings_keep_text (PP_SETTINGS_PAPER, i < n ? papers[i].id : own);
  pp_settings_keep_flag (PP_SETTINGS_SIDEWAYS, is_sideways (self));
}

/* Of the sheets of a panel; the blank ones are asked for each time. */
static void
keep_left_out (PpSheetsForm *self)
{
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();
  g_auto (GStrv) list = NULL;

  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);

      if (!row->is_blank && !gtk_check_button_get_active (row->tick))
        g_strv_builder_add (ids, row->kind->id);
    }
  list = g_strv_builder_end (ids);
  pp_settings_keep_list (PP_SETTINGS_LEFT_OUT, (const char * const *) list);
}

static void
keep (PpSheetsForm *self)
{
  keep_paper (self);
  keep_left_out (self);
  pp_settings_keep_flag (PP_SETTINGS_MONO, gtk_check_button_get_active (self->mono));
  pp_settings_keep_flag (PP_SETTINGS_MIRRORED, gtk_check_button_get_active (self->behind));
  pp_settings_keep_figure (PP_SETTINGS_INSET, pp_figure_entry_get_value (self->inset));
}

static void
changed_cb (PpSheetsForm *self)
{
  keep (self);
  show_all (self);
  show_parts (self);
  g_signal_emit (self, changed_signal, 0);
}

/* One change, however many ticks it moves. */
static void
all_toggled_cb (PpSheetsForm *self)
{
  gboolean on = gtk_check_button_get_active (self->all);

  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);

      if (row->is_blank)
        continue;
      g_signal_handlers_block_by_func (row->tick, changed_cb, self);
      gtk_check_button_set_active (row->tick, on);
      g_signal_handlers_unblock_by_func (row->tick, changed_cb, self);
    }
  changed_cb (self);
}

static void
committed_cb (PpFigureEntry *entry,
              double         value,
              gboolean       stepped,
              PpSheetsForm  *self)
{
  changed_cb (self);
}

static void
selected_cb (GtkDropDown  *paper,
             GParamSpec   *pspec,
             PpSheetsForm *self)
{
  changed_cb (self);
}

static void
pp_sheets_form_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_SHEETS_FORM);
  G_OBJECT_CLASS (pp_sheets_form_parent_class)->dispose (object);
}

static void
pp_sheets_form_finalize (GObject *object)
{
  g_array_unref (PP_SHEETS_FORM (object)->rows);
  G_OBJECT_CLASS (pp_sheets_form_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, all);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, kinds);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, blanks);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, behind);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, inset_row);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, inset);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, paper_label);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, paper);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, sides);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, across);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, down);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, ways);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, upright);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, sideways);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsForm, mono);
}

static void
pp_sheets_form_class_init (PpSheetsFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_sheets_form_dispose;
  G_OBJECT_CLASS (klass)->finalize = pp_sheets_form_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (PP_TYPE_CHOICE);
  g_type_ensure (PP_TYPE_LENGTH_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/sheets-form.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_children (widget_class);
}

static gboolean
is_left_out (const char *id)
{
  g_auto (GStrv) list = pp_settings_dup_list (PP_SETTINGS_LEFT_OUT);

  return g_strv_contains ((const char * const *) list, id);
}

static GtkWidget *
add_row (PpSheetsForm      *self,
         const PpSheetKind *kind,
         gboolean           is_blank)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *tick = gtk_check_button_new_with_label (_(kind->title));
  GtkWidget *count = gtk_label_new (NULL);
  const Row row = { kind, GTK_CHECK_BUTTON (tick), GTK_LABEL (count), is_blank };

  gtk_check_button_set_active (GTK_CHECK_BUTTON (tick), !is_blank && !is_left_out (kind->id));
  gtk_widget_set_hexpand (tick, TRUE);
  gtk_widget_add_css_class (count, "pp-count");
  gtk_box_append (GTK_BOX (box), tick);
  gtk_box_append (GTK_BOX (box), count);
  g_signal_connect_swapped (tick, "toggled", G_CALLBACK (changed_cb), self);
  g_array_append_val (self->rows, row);
  return box;
}

/* What belongs to a sheet stands in the template; it is moved to under its tick. */
static void
add_rows (PpSheetsForm *self)
{
  guint n, n_blanks;
  const PpSheetKind * const *kinds = pp_sheet_kinds (&n);
  const PpSheetKind * const *blanks = pp_sheet_blanks (&n_blanks);

  for (guint i = 0; i < n; i++)
    {
      GtkWidget *row = add_row (self, kinds[i], FALSE);

      gtk_box_append (self->kinds, row);
      if (g_str_equal (kinds[i]->id, "pattern"))
        gtk_box_reorder_child_after (self->kinds, GTK_WIDGET (self->behind), row);
      else if (g_str_equal (kinds[i]->id, "cutting"))
        gtk_box_reorder_child_after (self->kinds, self->inset_row, row);
    }
  for (guint i = 0; i < n_blanks; i++)
    gtk_box_append (self->blanks, add_row (self, blanks[i], TRUE));
}

/* One of the maker's own goes into the fields. */
static guint
find_paper (PpSheetsForm *self)
{
  g_autofree char *kept = pp_sheet_dup_paper ();
  guint n;
  const PpSheetPaper *papers = pp_sheet_papers (&n);
  PpPaper own = { 0, 0 };

  for (guint i = 0; i < n; i++)
    if (g_str_equal (papers[i].id, kept))
      return i;
  pp_paper_parse (kept, &own);
  pp_figure_entry_set_value (self->across, own.width);
  pp_figure_entry_set_value (self->down, own.height);
  return n;
}

static void
add_papers (PpSheetsForm *self)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  guint n;
  const PpSheetPaper *papers = pp_sheet_papers (&n);

  for (guint i = 0; i < n; i++)
    gtk_string_list_append (list, _(papers[i].title));
  gtk_string_list_append (list, _("A size of your own"));
  gtk_drop_down_set_model (self->paper, G_LIST_MODEL (list));
  gtk_drop_down_set_selected (self->paper, find_paper (self));
}

static void
restore (PpSheetsForm *self)
{
  double inset = pp_settings_get_figure (PP_SETTINGS_INSET);

  gtk_check_button_set_active (pp_settings_get_flag (PP_SETTINGS_SIDEWAYS) ? self->sideways
                                                                           : self->upright, TRUE);
  gtk_check_button_set_active (self->mono, pp_settings_get_flag (PP_SETTINGS_MONO));
  gtk_check_button_set_active (self->behind, pp_settings_get_flag (PP_SETTINGS_MIRRORED));
  pp_figure_entry_set_value (self->inset, CLAMP (inset, 0, MOST_INSET));
}

static void
fill_figures (PpSheetsForm *self)
{
  pp_figure_entry_set_range (self->inset, 0, MOST_INSET);
  pp_figure_entry_set_value (self->inset, 0);
  pp_figure_entry_set_range (self->across, PP_PAPER_MIN_SIDE, PP_PAPER_MAX_SIDE);
  pp_figure_entry_set_range (self->down, PP_PAPER_MIN_SIDE, PP_PAPER_MAX_SIDE);
  pp_figure_entry_set_value (self->across, 210);
  pp_figure_entry_set_value (self->down, 297);
}

static void
pp_sheets_form_init (PpSheetsForm *self)
{
  PpFigureEntry *entries[3];

  self->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  self->has_pieces = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  add_rows (self);
  fill_figures (self);
  add_papers (self);
  pp_drop_down_tell (self->paper, self->paper_label);
  restore (self);
  show_all (self);
  show_parts (self);
  entries[0] = self->inset;
  entries[1] = self->across;
  entries[2] = self->down;
  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    g_signal_connect (entries[i], "committed", G_CALLBACK (committed_cb), self);
  g_signal_connect (self->paper, "notify::selected", G_CALLBACK (selected_cb), self);
  g_signal_connect_swapped (self->all, "toggled", G_CALLBACK (all_toggled_cb), self);
  g_signal_connect_swapped (self->behind, "toggled", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->upright, "toggled", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->mono, "toggled", G_CALLBACK (changed_cb), self);
}

void
pp_sheets_form_set_panel (PpSheetsForm  *self,
                          const PpPanel *panel)
{
  PpFigureEntry *entries[3];

  g_return_if_fail (PP_IS_SHEETS_FORM (self) && panel != NULL);

  entries[0] = self->inset;
  entries[1] = self->across;
  entries[2] = self->down;
  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    pp_length_entry_set_units (PP_LENGTH_ENTRY (entries[i]), panel->units);
  self->has_pieces = panel->placements->len > 0;
  gtk_widget_set_sensitive (GTK_WIDGET (self->all), self->has_pieces);
  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);

      gtk_widget_set_sensitive (GTK_WIDGET (row->tick), row->is_blank || self->has_pieces);
    }
  show_parts (self);
}

void
pp_sheets_form_set_counts (PpSheetsForm *self,
                           const guint  *counts)
{
  g_return_if_fail (PP_IS_SHEETS_FORM (self));

  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);
      gboolean is_known = counts != NULL && (row->is_blank || self->has_pieces);
      g_autofree char *text = is_known
                              ? g_strdup_printf (ngettext ("%u page", "%u pages", counts[i]),
                                                 counts[i])
                              : g_strdup ("");

      gtk_label_set_text (row->count, text);
      gtk_accessible_update_property (GTK_ACCESSIBLE (row->tick),
                                      GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
    }
}

/* (transfer full) */
static char **
dup_kinds (PpSheetsForm *self)
{
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();

  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);

      if (gtk_check_button_get_active (row->tick) && (row->is_blank || self->has_pieces))
        g_strv_builder_add (ids, row->kind->id);
    }
  return g_strv_builder_end (ids);
}

static PpPaper
get_paper (PpSheetsForm *self)
{
  guint n, i = gtk_drop_down_get_selected (self->paper);
  const PpSheetPaper *papers = pp_sheet_papers (&n);
  PpPaper paper = { pp_figure_entry_get_value (self->across),
                    pp_figure_entry_get_value (self->down) };

  if (is_own_size (self))
    return paper;
  pp_paper_parse (papers[i].id, &paper);
  if (is_sideways (self))
    return (PpPaper) { paper.height, paper.width };
  return paper;
}

PpSheetChoice *
pp_sheets_form_dup_choice (PpSheetsForm *self)
{
  PpSheetChoice *choice;

  g_return_val_if_fail (PP_IS_SHEETS_FORM (self), NULL);

  choice = g_new0 (PpSheetChoice, 1);
  *choice = (PpSheetChoice) {
    .kinds = dup_kinds (self),
    .paper = get_paper (self),
    .mono = gtk_check_button_get_active (self->mono),
    .behind = gtk_check_button_get_active (self->behind),
    .inset = pp_figure_entry_get_value (self->inset),
  };
  return choice;
}
