/* picking-list.h: the pieces found in a picture, one a line: number, name, size, whether it is
 * kept.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals: chosen (guint), left-out (guint): it is to be left out, or kept again.
 */
#pragma once

#include "desk/picking.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct
{
  char     *name;
  char     *size;
  gboolean  is_kept;
} PpPickingLine;

#define PP_TYPE_PICKING_LIST (pp_picking_list_get_type ())
G_DECLARE_FINAL_TYPE (PpPickingList, pp_picking_list, PP, PICKING_LIST, GtkWidget)

/* `lines` are copied. */
void pp_picking_list_show (PpPickingList       *self,
                           const PpPickingLine *lines,
                           guint                n_lines,
                           guint                chosen);

G_END_DECLS
