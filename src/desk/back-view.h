/* back-view.h: the back of a piece with its dabs, as it lies in the hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/check.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_BACK_VIEW (pp_back_view_get_type ())
G_DECLARE_FINAL_TYPE (PpBackView, pp_back_view, PP, BACK_VIEW, GtkWidget)

/* The placement of that index, lifted from its place and turned over like a page: left is right.
 * `check` is nullable. */
void pp_back_view_show (PpBackView    *self,
                        const PpCheck *check,
                        guint          placement);

G_END_DECLS
