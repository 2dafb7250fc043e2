/* gallery.c: the art of a whole tray, judged and loaded once.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kept by the bytes' content; the same GBytes in two panels is found without comparing them.
 */
#include "config.h"

#include "art/gallery.h"

#include <gio/gio.h>

typedef struct
{
  PpArt *art;   /* NULL: not drawn */
  char  *fault; /* NULL: drawn */
} Picture;

struct _PpGallery
{
  gatomicrefcount  count;
  GHashTable      *pictures; /* GBytes to Picture */
};

static void
picture_free (gpointer data)
{
  Picture *picture = data;

  pp_art_unref (picture->art);
  g_free (picture->fault);
  g_free (picture);
}

static Picture *
picture_new (GBytes        *bytes,
             const Picture *lent)
{
  Picture *picture = g_new0 (Picture, 1);
  g_autoptr (GError) error = NULL;

  if (lent != NULL)
    {
      picture->art = lent->art != NULL ? pp_art_ref (lent->art) : NULL;
      picture->fault = g_strdup (lent->fault);
      return picture;
    }
  picture->art = pp_art_new (bytes, &error);
  picture->fault = error != NULL ? g_strdup (error->message) : NULL;
  return picture;
}

static const Picture *
find (PpGallery *self,
      GBytes    *bytes)
{
  return self != NULL && bytes != NULL ? g_hash_table_lookup (self->pictures, bytes) : NULL;
}

PpGallery *
pp_gallery_new (const PpPanel *panel,
                PpGallery     *previous)
{
  PpGallery *self = g_new0 (PpGallery, 1);

  g_atomic_ref_count_init (&self->count);
  self->pictures = g_hash_table_new_full (g_bytes_hash, g_bytes_equal,
                                          (GDestroyNotify) g_bytes_unref, picture_free);
  for (guint i = 0; i < panel->tray->len; i++)
    {
      GBytes *bytes = pp_panel_piece (panel, i)->art;

      if (bytes != NULL && find (self, bytes) == NULL)
        g_hash_table_insert (self->pictures, g_bytes_ref (bytes),
                             picture_new (bytes, find (previous, bytes)));
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
