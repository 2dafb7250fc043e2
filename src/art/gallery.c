/* gallery.c: the art of a whole tray, judged and loaded once.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Found by where the bytes lie, so that drawing reads none of them; bytes that lie elsewhere are
 * compared, which begins with their size.
 */
#include "config.h"

#include "art/gallery.h"

#include <gio/gio.h>

/* Counted: what shares bytes shares it. */
typedef struct
{
  PpArt *art;   /* NULL: not drawn */
  char  *fault; /* NULL: drawn */
} Picture;

struct _PpGallery
{
  gatomicrefcount  count;
  GHashTable      *pictures; /* GBytes, each by itself, to Picture */
};

static void
picture_clear (gpointer data)
{
  Picture *picture = data;

  pp_art_unref (picture->art);
  g_free (picture->fault);
}

static void
picture_unref (gpointer picture)
{
  g_atomic_rc_box_release_full (picture, picture_clear);
}

static Picture *
picture_new (GBytes *bytes)
{
  Picture *picture = g_atomic_rc_box_new0 (Picture);
  g_autoptr (GError) error = NULL;

  picture->art = pp_art_new (bytes, &error);
  picture->fault = error != NULL ? g_strdup (error->message) : NULL;
  return picture;
}

static Picture *
find (PpGallery *self,
      GBytes    *bytes)
{
  Picture *picture;
  GHashTableIter iter;
  gpointer other, its;

  if (self == NULL || bytes == NULL)
    return NULL;
  picture = g_hash_table_lookup (self->pictures, bytes);
  if (picture != NULL)
    return picture;
  g_hash_table_iter_init (&iter, self->pictures);
  while (g_hash_table_iter_next (&iter, &other, &its))
    if (g_bytes_equal (bytes, other))
      return its;
  return NULL;
}

PpGallery *
pp_gallery_new (const PpPanel *panel,
                PpGallery     *previous)
{
  PpGallery *self = g_new0 (PpGallery, 1);

  g_atomic_ref_count_init (&self->count);
  self->pictures = g_hash_table_new_full (NULL, NULL, (GDestroyNotify) g_bytes_unref,
                                          picture_unref);
  for (guint i = 0; i < panel->tray->len; i++)
    {
      GBytes *bytes = pp_panel_piece (panel, i)->art;
      Picture *picture;

      if (bytes == NULL || g_hash_table_contains (self->pictures, bytes))
        continue;
      picture = find (previous, bytes);
      if (picture == NULL)
        picture = find (self, bytes);
      g_hash_table_insert (self->pictures, g_bytes_ref (bytes),
                           picture != NULL ? g_atomic_rc_box_acquire (picture)
                                           : picture_new (bytes));
    }
  return self;
}

PpGallery *
pp_gallery_ref (PpGallery *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  g_atomic_ref_count_inc (&self->count);
  return self;
}

void
pp_gallery_unref (PpGallery *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->count))
    return;
  g_hash_table_unref (self->pictures);
  g_free (self);
}

PpArt *
pp_gallery_get (PpGallery     *self,
                const PpPiece *piece)
{
  const Picture *picture = find (self, piece->art);

  return picture != NULL ? picture->art : NULL;
}

const char *
pp_gallery_get_fault (PpGallery     *self,
                      const PpPiece *piece)
{
  const Picture *picture = find (self, piece->art);

  return picture != NULL ? picture->fault : NULL;
}
