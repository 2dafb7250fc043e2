/* sketch.h: small pictures of our own that say in one line what a choice means.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drawn with one line weight in the colours of the palette; as large as the text asks.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum
{
  PP_SKETCH_NONE,
  PP_SKETCH_WALL,
  PP_SKETCH_WINDOW,
  PP_SKETCH_RECTANGLE,
  PP_SKETCH_OVAL,
  PP_SKETCH_ARCH,
  PP_SKETCH_TOUCH_ALL, /* a piece on a flat top, seen from the side */
  PP_SKETCH_TOUCH_MIDDLE,
  PP_SKETCH_TOUCH_RIM,
  PP_SKETCH_TOUCH_ENDS,
  PP_SKETCH_TOUCH_BASE,
  PP_SKETCH_TOUCH_TIP,
} PpSketchKind;

#define PP_TYPE_SKETCH_KIND (pp_sketch_kind_get_type ())
GType pp_sketch_kind_get_type (void);

#define PP_TYPE_SKETCH (pp_sketch_get_type ())
G_DECLARE_FINAL_TYPE (PpSketch, pp_sketch, PP, SKETCH, GtkWidget)

void pp_sketch_set_kind (PpSketch     *self,
                         PpSketchKind  kind);

G_END_DECLS
