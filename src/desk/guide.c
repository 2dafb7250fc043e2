/* guide.c: the guide of data/guide, to be read in the window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pages hold four things and no more (tests/house/guide.py sees to it): a title after "# ",
 * headings after "## ", pictures with their words, and paragraphs; each stands between empty lines.
 * The page lies in the middle of a box as wide as the window, since GTK aligns what wraps by its
 * least width.
 */
#include "desk/guide.h"

#include "desk/em.h"

#include <string.h>

#define PLACE "/org/petalpane/Petalpane"
#define LINE_CHARS 80
#define PICTURE_EMS 54 /* wide, where there is room */

/* The text in the first of the maker's languages that has one. */
static GBytes *
load_text (void)
{
  for (const char * const *name = g_get_language_names (); *name != NULL; name++)
    {
      g_autofree char *path = g_strdup_printf (PLACE "/guide/guide.%s.md", *name);
      GBytes *text = g_resources_lookup_data (path, 0, NULL);

      if (text != NULL)
        return text;
      if (g_str_equal (*name, "en"))
        break;
    }
  return g_resources_lookup_data (PLACE "/guide/guide.md", 0, NULL);
}

static GtkWidget *
make_label (const char        *words,
            GtkAccessibleRole  role,
            const char        *style)
{
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "accessible-role", role, "label", words,
                                   "wrap", TRUE, "xalign", 0.0, "max-width-chars", LINE_CHARS,
                                   NULL);

  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

/* As sharp as the screen is and no larger, so that nothing scales it again. */
static void
show_picture (GtkPicture *picture)
{
  const char *path = g_object_get_data (G_OBJECT (picture), "path");
  int width = (int) (PICTURE_EMS * pp_em_of (GTK_WIDGET (picture)))
              * gtk_widget_get_scale_factor (GTK_WIDGET (picture));
  g_autoptr (GdkPixbuf) pixbuf
    = gdk_pixbuf_new_from_resource_at_scale (path, width, -1, TRUE, NULL);
  g_autoptr (GdkTexture) texture = gdk_texture_new_for_pixbuf (pixbuf);

  gtk_picture_set_paintable (picture, GDK_PAINTABLE (texture));
}

/* ![WORDS](../pictures/NAME) */
static void
add_picture (GtkBox     *page,
             const char *block)
{
  const char *middle = strstr (block, "](");
  g_autofree char *words = g_strndup (block + 2, middle - block - 2);
  g_autofree char *file = g_strndup (middle + 2, strlen (middle) - 3);
  g_autofree char *name = g_path_get_basename (file);
  GtkWidget *picture = gtk_picture_new ();

  g_object_set_data_full (G_OBJECT (picture), "path", g_strconcat (PLACE "/pictures/", name, NULL),
                          g_free);
  gtk_accessible_update_property (GTK_ACCESSIBLE (picture), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                  -1);
  gtk_widget_add_css_class (picture, "pp-guide-picture");
  g_signal_connect (picture, "realize", G_CALLBACK (show_picture), NULL);
  gtk_box_append (page, picture);
  gtk_box_append (page, make_label (words, GTK_ACCESSIBLE_ROLE_LABEL, "pp-guide-words"));
}

static void
add_block (GtkBox *page,
           char   *block)
{
  g_strdelimit (g_strstrip (block), "\n", ' ');
  if (g_str_has_prefix (block, "## "))
    gtk_box_append (page, make_label (block + 3, GTK_ACCESSIBLE_ROLE_HEADING, "pp-guide-heading"));
  else if (g_str_has_prefix (block, "# "))
    gtk_box_append (page, make_label (block + 2, GTK_ACCESSIBLE_ROLE_HEADING, "pp-guide-title"));
  else if (g_str_has_prefix (block, "!["))
    add_picture (page, block);
  else if (*block != '\0')
    gtk_box_append (page, make_label (block, GTK_ACCESSIBLE_ROLE_LABEL, NULL));
}

/* As wide as the page likes to be, which is as wide as is read well. */
static int
get_width (GtkWidget *page)
{
  int natural;

  gtk_widget_measure (page, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &natural, NULL, NULL);
  return natural;
}

static GtkSizeRequestMode
get_request_mode (GtkWidget *middle)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
measure (GtkWidget      *middle,
         GtkOrientation  orientation,
         int             for_size,
         int            *minimum,
         int            *natural,
         int            *minimum_baseline,
         int            *natural_baseline)
{
  GtkWidget *page = gtk_widget_get_first_child (middle);

  if (orientation == GTK_ORIENTATION_VERTICAL && for_size >= 0)
    for_size = MIN (for_size, get_width (page));
  gtk_widget_measure (page, orientation, for_size, minimum, natural, NULL, NULL);
}

static void
allocate (GtkWidget *middle,
          int        width,
          int        height,
          int        baseline)
{
  GtkWidget *page = gtk_widget_get_first_child (middle);
  int wide = MIN (width, get_width (page));

  gtk_widget_size_allocate (page, &(GtkAllocation) { (width - wide) / 2, 0, wide, height }, -1);
}

GtkWidget *
pp_guide_new (void)
{
  GtkWidget *middle = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *page = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autoptr (GBytes) text = load_text ();
  g_auto (GStrv) blocks = g_strsplit (g_bytes_get_data (text, NULL), "\n\n", -1);

  gtk_widget_set_layout_manager (middle,
                                 gtk_custom_layout_new (get_request_mode, measure, allocate));
  gtk_widget_add_css_class (page, "pp-guide");
  for (char **block = blocks; *block != NULL; block++)
    add_block (GTK_BOX (page), *block);
  gtk_box_append (GTK_BOX (middle), page);
  return middle;
}
