/* panel-peek.h: a look into a panel's file: its title, its size and a small picture of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Made in another thread, since a disk may be slow and art takes time to draw.
 */
#pragma once

#include <gdk/gdk.h>

G_BEGIN_DECLS

typedef struct
{
  char       *title;   /* of the panel, or the file's name where it has none */
  char       *size;    /* "300 x 420 mm" in the panel's unit, with a real multiplication sign */
  GdkTexture *picture; /* on nothing: what is not glass is clear */
} PpPeek;

void    pp_peek_free   (PpPeek              *self);

/* `side` px: of the square the picture fits into. */
void    pp_peek_async  (GFile               *file,
                        int                  side,
                        GAsyncReadyCallback  callback,
                        gpointer             data);
/* (transfer full). Errors: PP_FILE_ERROR; G_IO_ERROR_NOT_FOUND where no file stands. */
PpPeek *pp_peek_finish (GAsyncResult        *result,
                        GError             **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpPeek, pp_peek_free)

G_END_DECLS
