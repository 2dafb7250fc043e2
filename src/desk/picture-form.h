/* picture-form.h: what is asked about a picture that pieces are made from, beside it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/piece-bench.h"

G_BEGIN_DECLS

#define PP_TYPE_PICTURE_FORM (pp_picture_form_get_type ())
G_DECLARE_FINAL_TYPE (PpPictureForm, pp_picture_form, PP, PICTURE_FORM, GtkBox)

/* (transfer floating); the bench outlives it. */
GtkWidget *pp_picture_form_new (PpPieceBench *bench);

G_END_DECLS
