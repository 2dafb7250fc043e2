/* panel-tile.c: a panel on the shelf.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/panel-tile.h"

#include "desk/em.h"
#include "desk/panel-peek.h"
#include "desk/say.h"
#include "panel/i18n.h"

#include <string.h>

#define PICTURE_EMS 6.0

struct _PpPanelTile
{
  GtkButton  parent_instance;
  GFile     *file;
  gboolean   is_sample;
  gboolean   is_read;
  char      *name;      /* said in place of the title; NULL: that of the panel */

  GtkImage  *picture;
  GtkLabel  *title;
  GtkLabel  *detail;
};

G_DEFINE_FINAL_TYPE (PpPanelTile, pp_panel_tile, GTK_TYPE_BUTTON)

/* The folder as the maker knows it, "~/panels". (transfer full) */
static char *
describe_folder (GFile *file)
{
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autofree char *name = folder != NULL ? g_file_get_parse_name (folder) : NULL;

  const char *home = g_get_home_dir ();

  if (name != NULL && g_str_has_prefix (name, home)
      && (name[strlen (home)] == '\0' || name[strlen (home)] == G_DIR_SEPARATOR))
    return g_strconcat ("~", name + strlen (home), NULL);
  return g_steal_pointer (&name);
}

static void
show_words (PpPanelTile *self,
            const char  *title,
            const char  *size)
{
  g_autofree char *folder = self->is_sample || self->name != NULL ? NULL
                                                                  : describe_folder (self->file);
  g_autofree char *detail = folder == NULL || size == NULL
                              ? g_strdup (size != NULL ? size : folder != NULL ? folder : "")
                              : g_strconcat (size, " · ", folder, NULL);

  if (self->name != NULL)
    title = self->name;
  gtk_label_set_text (self->title, title);
  pp_say_or_hide (self->detail, detail);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), folder);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, detail, -1);
}

static void
show_name (PpPanelTile *self)
{
  g_autofree char *base = g_file_get_basename (self->file);
  g_autofree char *name = g_filename_display_name (base);

  show_words (self, name, NULL);
}

static void
peeked_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (PpPanelTile) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPeek) peek = pp_peek_finish (result, &error);

  if (peek != NULL)
    {
      show_words (self, peek->title, peek->size);
      gtk_image_set_from_paintable (self->picture, GDK_PAINTABLE (peek->picture));
    }
  else if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND))
    gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  else
    show_words (self, gtk_label_get_text (self->title), _("It cannot be read"));
}

/* The text's size is known once the tile stands in a window. */
static void
pp_panel_tile_root (GtkWidget *widget)
{
  PpPanelTile *self = PP_PANEL_TILE (widget);
  int side;

  GTK_WIDGET_CLASS (pp_panel_tile_parent_class)->root (widget);
  side = (int) (PICTURE_EMS * pp_em_of (widget));
  gtk_image_set_pixel_size (self->picture, side);
  if (self->is_read)
    return;
  self->is_read = TRUE;
  pp_peek_async (self->file, side * MAX (gtk_widget_get_scale_factor (widget), 2), peeked_cb,
                 g_object_ref (self));
}

static void
pp_panel_tile_dispose (GObject *object)
{
  PpPanelTile *self = PP_PANEL_TILE (object);

  g_clear_object (&self->file);
  g_clear_pointer (&self->name, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), PP_TYPE_PANEL_TILE);
  G_OBJECT_CLASS (pp_panel_tile_parent_class)->dispose (object);
}

static void
pp_panel_tile_class_init (PpPanelTileClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_panel_tile_dispose;
  widget_class->root = pp_panel_tile_root;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/panel-tile.ui");
  gtk_widget_class_bind_template_child (widget_class, PpPanelTile, picture);
  gtk_widget_class_bind_template_child (widget_class, PpPanelTile, title);
  gtk_widget_class_bind_template_child (widget_class, PpPanelTile, detail);
}

static void
pp_panel_tile_init (PpPanelTile *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
pp_panel_tile_new (GFile    *file,
                   gboolean  is_sample)
{
  PpPanelTile *self;

  g_return_val_if_fail (G_IS_FILE (file), NULL);
  self = g_object_new (PP_TYPE_PANEL_TILE, NULL);
  self->file = g_object_ref (file);
  self->is_sample = is_sample;
  show_name (self);
  return GTK_WIDGET (self);
}

GtkWidget *
pp_panel_tile_new_named (GFile      *file,
                         const char *name)
{
  PpPanelTile *self;

  g_return_val_if_fail (G_IS_FILE (file) && name != NULL, NULL);
  self = g_object_new (PP_TYPE_PANEL_TILE, NULL);
  self->file = g_object_ref (file);
  self->name = g_strdup (name);
  show_words (self, name, NULL);
  return GTK_WIDGET (self);
}

GFile *
pp_panel_tile_get_file (PpPanelTile *self)
{
  g_return_val_if_fail (PP_IS_PANEL_TILE (self), NULL);
  return self->file;
}

gboolean
pp_panel_tile_is_sample (PpPanelTile *self)
{
  g_return_val_if_fail (PP_IS_PANEL_TILE (self), FALSE);
  return self->is_sample;
}
