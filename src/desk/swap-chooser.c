/* swap-chooser.c: the pieces of the tray, to choose what the chosen ones are swapped for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pieces of the chosen one's kind come first, for a flower is mostly swapped for a flower.
 */
#include "config.h"

#include "desk/swap-chooser.h"

#include "desk/arrange-acts.h"
#include "desk/em.h"
#include "desk/piece-thumb.h"
#include "desk/tray-words.h"
#include "panel/i18n.h"

#define HEIGHT_EMS 24
#define ID "pp-piece"

static const PpPiece *
get_first_piece (PpDocument *document)
{
  const PpPanel *panel = pp_document_get_panel (document);
  const char *id = pp_document_get_chosen_ids (document)[0];

  return pp_panel_get_piece_of (panel, pp_panel_find_placement (panel, id, NULL));
}

static GtkWidget *
make_label (const char *text,
            const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static GtkWidget *
make_row (const PpPiece *piece,
          guint          placed)
{
  g_autofree char *left = pp_tray_words_left (piece->count, placed);
  g_autofree char *spoken = g_strdup_printf ("%s, %s", pp_tray_words_name (piece), left);
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *thumb = pp_piece_thumb_new ();

  pp_piece_thumb_set_piece (PP_PIECE_THUMB (thumb), piece);
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (words), make_label (pp_tray_words_name (piece), NULL));
  gtk_box_append (GTK_BOX (words), make_label (left, "pp-faint"));
  gtk_box_append (GTK_BOX (box), thumb);
  gtk_box_append (GTK_BOX (box), words);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  g_object_set_data_full (G_OBJECT (row), ID, g_strdup (piece->id), g_free);
  return row;
}

/* But for `but` (nullable). */
static void
add_rows (GtkListBox    *list,
          const PpPanel *panel,
          const PpPiece *but,
          PpKind         kind,
          gboolean       of_kind)
{
  for (guint i = 0; i < panel->tray->len; i++)
    {
      const PpPiece *piece = pp_panel_piece (panel, i);

      if (piece != but && (piece->kind == kind) == of_kind)
        gtk_list_box_append (list, make_row (piece, pp_panel_count_placed (panel, piece->id)));
    }
}

/* Whether the row's piece has in its name what is typed. */
static gboolean
filter_row (GtkListBoxRow *row,
            gpointer       data)
{
  GtkWidget *entry = data;
  PpDocument *document = g_object_get_data (G_OBJECT (entry), "pp-document");
  const PpPiece *piece = pp_panel_find_piece (pp_document_get_panel (document),
                                              g_object_get_data (G_OBJECT (row), ID), NULL);
  g_autofree char *typed = g_utf8_casefold (gtk_editable_get_text (GTK_EDITABLE (entry)), -1);
  g_autofree char *name = NULL;

  if (piece == NULL)
    return FALSE;
  name = g_utf8_casefold (pp_tray_words_name (piece), -1);
  return strstr (name, typed) != NULL;
}

static void
typed_cb (GtkSearchEntry *entry,
          GtkListBox     *list)
{
  gtk_list_box_invalidate_filter (list);
}

static void
activated_cb (GtkListBox    *list,
              GtkListBoxRow *row,
              PpDocument    *document)
{
  g_autofree char *id = g_strdup (g_object_get_data (G_OBJECT (row), ID));
  g_autoptr (PpDocument) held = g_object_ref (document);

  gtk_popover_popdown (GTK_POPOVER (gtk_widget_get_ancestor (GTK_WIDGET (list), GTK_TYPE_POPOVER)));
  pp_arrange_acts_swap (held, id);
}

static GtkListBoxRow *
find_first (GtkListBox *list)
{
  GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (list));

  while (row != NULL && !gtk_widget_get_child_visible (row))
    row = gtk_widget_get_next_sibling (row);
  return row != NULL ? GTK_LIST_BOX_ROW (row) : NULL;
}

static void
entered_cb (GtkSearchEntry *entry,
            GtkListBox     *list)
{
  GtkListBoxRow *first = find_first (list);

  if (first != NULL)
    g_signal_emit_by_name (list, "row-activated", first);
}

static void
stopped_cb (GtkSearchEntry *entry,
            GtkPopover     *popover)
{
  gtk_popover_popdown (popover);
}

/* Down from the field into the list. */
static gboolean
key_cb (GtkEventController *keys,
        guint               key,
        guint               code,
        GdkModifierType     state,
        GtkListBox         *list)
{
  GtkListBoxRow *first = find_first (list);

  if ((key != GDK_KEY_Down && key != GDK_KEY_KP_Down) || first == NULL)
    return GDK_EVENT_PROPAGATE;
  gtk_widget_grab_focus (GTK_WIDGET (first));
  return GDK_EVENT_STOP;
}

static char *
say_heading (PpDocument *document)
{
  guint n = g_strv_length ((char **) pp_document_get_chosen_ids (document));

  if (n == 1)
    return g_strdup_printf (_("Swap %s for"), pp_tray_words_name (get_first_piece (document)));
  return g_strdup_printf (ngettext ("Swap %u piece for", "Swap %u pieces for", n), n);
}

static GtkWidget *
make_list (PpDocument *document,
           GtkWidget  *entry)
{
  GtkWidget *list = gtk_list_box_new ();
  gboolean is_one = pp_document_get_chosen_ids (document)[1] == NULL;
  const PpPiece *first = get_first_piece (document), *but = is_one ? first : NULL;
  const PpPanel *panel = pp_document_get_panel (document);

  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Pieces of the tray"), -1);
  add_rows (GTK_LIST_BOX (list), panel, but, first->kind, TRUE);
  add_rows (GTK_LIST_BOX (list), panel, but, first->kind, FALSE);
  gtk_list_box_set_filter_func (GTK_LIST_BOX (list), filter_row, entry, NULL);
  g_signal_connect_object (list, "row-activated", G_CALLBACK (activated_cb), document, 0);
  return list;
}

static GtkWidget *
make_entry (PpDocument *document)
{
  GtkWidget *entry = gtk_search_entry_new ();

  gtk_search_entry_set_search_delay (GTK_SEARCH_ENTRY (entry), 0);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Find a piece"), -1);
  g_object_set_data_full (G_OBJECT (entry), "pp-document", g_object_ref (document), g_object_unref);
  return entry;
}

GtkWidget *
pp_swap_chooser_new (PpDocument *document)
{
  GtkWidget *popover = gtk_popover_new (), *entry = make_entry (document);
  GtkWidget *list = make_list (document, entry);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  g_autofree char *heading = say_heading (document);

  gtk_box_append (GTK_BOX (box), make_label (heading, "pp-card-title"));
  gtk_box_append (GTK_BOX (box), entry);
  gtk_box_append (GTK_BOX (box), scrolled);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled),
                                              (int) (HEIGHT_EMS * pp_em_of (popover)));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), list);
  g_signal_connect_object (entry, "search-changed", G_CALLBACK (typed_cb), list, 0);
  g_signal_connect_object (entry, "activate", G_CALLBACK (entered_cb), list, 0);
  g_signal_connect_object (entry, "stop-search", G_CALLBACK (stopped_cb), popover, 0);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (key_cb), list, 0);
  gtk_widget_add_controller (entry, keys);
  gtk_widget_add_css_class (popover, "pp-swap");
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  return popover;
}
