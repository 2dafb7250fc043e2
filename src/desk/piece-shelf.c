/* piece-shelf.c: pieces to choose from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A grid view makes only the tiles that are seen, so a box of two thousand pieces opens at once.
 */
#include "config.h"

#include "desk/piece-shelf.h"

#include "desk/piece-thumb.h"
#include "desk/pointed.h"
#include "desk/template.h"
#include "desk/tray-words.h"
#include "panel/i18n.h"
#include "shape/polygon.h"

#define PP_TYPE_SHELF_ITEM (pp_shelf_item_get_type ())
G_DECLARE_FINAL_TYPE (PpShelfItem, pp_shelf_item, PP, SHELF_ITEM, GObject)

struct _PpShelfItem
{
  GObject        parent_instance;
  const PpPiece *piece;
  char          *words;
  char          *folded; /* the name as it is sought */
};

G_DEFINE_FINAL_TYPE (PpShelfItem, pp_shelf_item, G_TYPE_OBJECT)

static void
pp_shelf_item_finalize (GObject *object)
{
  PpShelfItem *self = PP_SHELF_ITEM (object);

  g_clear_pointer (&self->piece, pp_piece_unref);
  g_free (self->words);
  g_free (self->folded);
  G_OBJECT_CLASS (pp_shelf_item_parent_class)->finalize (object);
}

static void
pp_shelf_item_class_init (PpShelfItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = pp_shelf_item_finalize;
}

static void
pp_shelf_item_init (PpShelfItem *self)
{
}

struct _PpPieceShelf
{
  GtkWidget           parent_instance;
  GListStore         *items;
  GtkFilterListModel *found;
  GtkSortListModel   *sorted;
  GtkSingleSelection *choice;
  gboolean            is_choosing;
  char               *sought; /* folded */
  int                 kind;
  PpShelfOrder        order;

  GtkWidget          *search;
  GtkWidget          *frame;
  GtkGridView        *grid;
  GtkWidget          *nothing;
};

G_DEFINE_FINAL_TYPE (PpPieceShelf, pp_piece_shelf, GTK_TYPE_WIDGET)

enum
{
  CHOSEN,
  ACTIVATED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static char *
fold (const char *text)
{
  g_autofree char *plain = g_utf8_normalize (text, -1, G_NORMALIZE_ALL);

  return g_utf8_casefold (plain != NULL ? plain : "", -1);
}

static gboolean
is_found (gpointer object,
          gpointer data)
{
  PpShelfItem *item = object;
  PpPieceShelf *self = data;

  return (self->kind < 0 || (int) item->piece->kind == self->kind)
         && (self->sought == NULL || strstr (item->folded, self->sought) != NULL);
}

/* Equal ones stay as they were given. */
static int
compare (gconstpointer a,
         gconstpointer b,
         gpointer      data)
{
  const PpShelfItem *one = a, *other = b;
  double by;

  switch (((PpPieceShelf *) data)->order)
    {
    case PP_SHELF_AS_GIVEN:
      return 0;
    case PP_SHELF_BY_NAME:
      return g_utf8_collate (pp_tray_words_name (one->piece), pp_tray_words_name (other->piece));
    case PP_SHELF_BY_SIZE:
      by = pp_outline_length (other->piece->outline) - pp_outline_length (one->piece->outline);
      return by < 0 ? -1 : by > 0;
    case PP_SHELF_BY_COUNT:
      return one->piece->count < other->piece->count ? -1
                                                     : one->piece->count > other->piece->count;
    }
  g_return_val_if_reached (0);
}

static void
filter_again (PpPieceShelf *self)
{
  gtk_filter_changed (gtk_filter_list_model_get_filter (self->found), GTK_FILTER_CHANGE_DIFFERENT);
  gtk_widget_set_visible (self->nothing,
                          g_list_model_get_n_items (G_LIST_MODEL (self->found)) == 0
                            && g_list_model_get_n_items (G_LIST_MODEL (self->items)) > 0);
}

static void
search_cb (GtkSearchEntry *entry,
           PpPieceShelf   *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));

  g_clear_pointer (&self->sought, g_free);
  if (*text != '\0')
    self->sought = fold (text);
  filter_again (self);
}

/* Escape, which the field keeps to itself: first for what is sought, then for the window. */
static void
stop_search_cb (GtkSearchEntry *entry,
                PpPieceShelf   *self)
{
  if (*gtk_editable_get_text (GTK_EDITABLE (entry)) != '\0')
    gtk_editable_set_text (GTK_EDITABLE (entry), "");
  else
    gtk_widget_activate_action (GTK_WIDGET (entry), "window.close", NULL);
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *row,
          PpPieceShelf             *self)
{
  GtkWidget *tile = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *thumb = pp_piece_thumb_new ();
  GtkWidget *name = gtk_label_new (NULL), *words = gtk_label_new (NULL);

  gtk_widget_set_halign (thumb, GTK_ALIGN_CENTER);
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (name), 14);
  gtk_label_set_ellipsize (GTK_LABEL (words), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (words), 14);
  gtk_widget_add_css_class (words, "pp-hint");
  gtk_box_append (GTK_BOX (tile), thumb);
  gtk_box_append (GTK_BOX (tile), name);
  gtk_box_append (GTK_BOX (tile), words);
  pp_pointed_watch (tile, GTK_WIDGET (self));
  gtk_list_item_set_child (row, tile);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *row)
{
  PpShelfItem *item = gtk_list_item_get_item (row);
  GtkWidget *tile = gtk_list_item_get_child (row);
  GtkWidget *thumb = gtk_widget_get_first_child (tile);
  GtkWidget *name = gtk_widget_get_next_sibling (thumb);
  g_autofree char *all = g_strdup_printf ("%s, %s", pp_tray_words_name (item->piece), item->words);

  pp_piece_thumb_set_piece (PP_PIECE_THUMB (thumb), item->piece);
  gtk_label_set_text (GTK_LABEL (name), pp_tray_words_name (item->piece));
  gtk_label_set_text (GTK_LABEL (gtk_widget_get_next_sibling (name)), item->words);
  gtk_widget_set_tooltip_text (tile, all);
  /* its cell has the focus */
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_parent (tile)),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, all, -1);
}

static void
selected_cb (GtkSingleSelection *choice,
             GParamSpec         *pspec,
             PpPieceShelf       *self)
{
  const PpPiece *piece = pp_piece_shelf_get (self);

  if (piece != NULL && !self->is_choosing)
    g_signal_emit (self, signals[CHOSEN], 0, piece);
}

static void
activate_cb (GtkGridView  *grid,
             guint         position,
             PpPieceShelf *self)
{
  g_autoptr (PpShelfItem) item = g_list_model_get_item (G_LIST_MODEL (self->choice), position);

  if (item != NULL)
    g_signal_emit (self, signals[ACTIVATED], 0, item->piece);
}

/* An empty frame would take the focus itself. */
static void
found_cb (PpPieceShelf *self)
{
  gtk_widget_set_can_focus (self->frame,
                            g_list_model_get_n_items (G_LIST_MODEL (self->found)) > 0);
}

/* The pieces are one stop of Tab, and gone through with the arrows. */
static gboolean
pp_piece_shelf_focus (GtkWidget        *widget,
                      GtkDirectionType  direction)
{
  PpPieceShelf *self = PP_PIECE_SHELF (widget);

  if (gtk_widget_get_focus_child (GTK_WIDGET (self->grid)) != NULL)
    {
      if (direction == GTK_DIR_TAB_FORWARD)
        return FALSE;
      if (direction == GTK_DIR_TAB_BACKWARD)
        return gtk_widget_child_focus (self->search, direction);
    }
  return GTK_WIDGET_CLASS (pp_piece_shelf_parent_class)->focus (widget, direction);
}

static void
pp_piece_shelf_dispose (GObject *object)
{
  PpPieceShelf *self = PP_PIECE_SHELF (object);

  if (self->choice != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->choice, self);
      g_signal_handlers_disconnect_by_data (self->found, self);
    }
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_PIECE_SHELF);
  g_clear_object (&self->choice);
  g_clear_object (&self->items);
  g_clear_pointer (&self->sought, g_free);
  G_OBJECT_CLASS (pp_piece_shelf_parent_class)->dispose (object);
}

static void
pp_piece_shelf_class_init (PpPieceShelfClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_piece_shelf_dispose;
  widget_class->focus = pp_piece_shelf_focus;
  signals[CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  pp_pointed_add_signal (G_OBJECT_CLASS (klass));
  signals[ACTIVATED] = g_signal_new ("activated", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                     NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/piece-shelf.ui");
  gtk_widget_class_bind_template_child (widget_class, PpPieceShelf, search);
  gtk_widget_class_bind_template_child (widget_class, PpPieceShelf, frame);
  gtk_widget_class_bind_template_child (widget_class, PpPieceShelf, grid);
  gtk_widget_class_bind_template_child (widget_class, PpPieceShelf, nothing);
  gtk_widget_class_bind_template_callback (widget_class, search_cb);
  gtk_widget_class_bind_template_callback (widget_class, stop_search_cb);
  gtk_widget_class_bind_template_callback (widget_class, setup_cb);
  gtk_widget_class_bind_template_callback (widget_class, bind_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
}

static void
pp_piece_shelf_init (PpPieceShelf *self)
{
  GtkFilter *filter = GTK_FILTER (gtk_custom_filter_new (is_found, self, NULL));
  GtkSorter *sorter = GTK_SORTER (gtk_custom_sorter_new (compare, self, NULL));

  self->kind = -1;
  self->items = g_list_store_new (PP_TYPE_SHELF_ITEM);
  self->found = gtk_filter_list_model_new (G_LIST_MODEL (g_object_ref (self->items)), filter);
  self->sorted = gtk_sort_list_model_new (G_LIST_MODEL (self->found), sorter);
  self->choice = gtk_single_selection_new (G_LIST_MODEL (self->sorted));
  gtk_single_selection_set_autoselect (self->choice, FALSE);
  gtk_single_selection_set_can_unselect (self->choice, TRUE);
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_grid_view_set_model (self->grid, GTK_SELECTION_MODEL (self->choice));
  gtk_single_selection_set_selected (self->choice, GTK_INVALID_LIST_POSITION);
  g_signal_connect_swapped (self->found, "items-changed", G_CALLBACK (found_cb), self);
  g_signal_connect (self->choice, "notify::selected-item", G_CALLBACK (selected_cb), self);
}

void
pp_piece_shelf_clear (PpPieceShelf *self)
{
  g_return_if_fail (PP_IS_PIECE_SHELF (self));

  self->is_choosing = TRUE;
  g_list_store_remove_all (self->items);
  self->is_choosing = FALSE;
}

void
pp_piece_shelf_add (PpPieceShelf  *self,
                    const PpPiece *piece,
                    const char    *words)
{
  g_autoptr (PpShelfItem) item = g_object_new (PP_TYPE_SHELF_ITEM, NULL);

  g_return_if_fail (PP_IS_PIECE_SHELF (self));

  item->piece = pp_piece_ref (piece);
  item->words = g_strdup (words);
  item->folded = fold (pp_tray_words_name (piece));
  self->is_choosing = TRUE;
  g_list_store_append (self->items, item);
  self->is_choosing = FALSE;
}

const PpPiece *
pp_piece_shelf_get (PpPieceShelf *self)
{
  PpShelfItem *item;

  g_return_val_if_fail (PP_IS_PIECE_SHELF (self), NULL);
  item = gtk_single_selection_get_selected_item (self->choice);
  return item != NULL ? item->piece : NULL;
}

void
pp_piece_shelf_choose (PpPieceShelf *self,
                       const char   *id)
{
  guint position = GTK_INVALID_LIST_POSITION;

  g_return_if_fail (PP_IS_PIECE_SHELF (self));

  for (guint i = 0; id != NULL && i < g_list_model_get_n_items (G_LIST_MODEL (self->choice)); i++)
    {
      g_autoptr (PpShelfItem) item = g_list_model_get_item (G_LIST_MODEL (self->choice), i);

      if (g_str_equal (item->piece->id, id) && position == GTK_INVALID_LIST_POSITION)
        position = i;
    }
  self->is_choosing = TRUE;
  gtk_single_selection_set_selected (self->choice, position);
  self->is_choosing = FALSE;
}

void
pp_piece_shelf_set_kind (PpPieceShelf *self,
                         int           kind)
{
  g_return_if_fail (PP_IS_PIECE_SHELF (self));
  self->kind = kind;
  filter_again (self);
}

void
pp_piece_shelf_set_order (PpPieceShelf *self,
                          PpShelfOrder  order)
{
  g_return_if_fail (PP_IS_PIECE_SHELF (self));
  self->order = order;
  gtk_sorter_changed (gtk_sort_list_model_get_sorter (self->sorted), GTK_SORTER_CHANGE_DIFFERENT);
}
