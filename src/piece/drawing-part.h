/* drawing-part.h: the parts of a drawing that have a name of their own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define PP_DRAWING_MOST_PARTS 500

typedef struct
{
  char     *id;
  gboolean  is_line; /* it has no fill of its own: what is inside the line counts */
} PpDrawingPart;

/* What is drawn and has an id, from the back to the front; of definitions nothing. `judged`: as
 * pp_art_judge() wrote it. (transfer full) of PpDrawingPart. */
GPtrArray           *pp_drawing_parts      (GBytes          *judged);
/* (nullable) (transfer none) */
const PpDrawingPart *pp_drawing_parts_find (const GPtrArray *parts,
                                            const char      *id);

G_END_DECLS
