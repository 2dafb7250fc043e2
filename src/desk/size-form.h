/* size-form.h: the size of a piece of glass: a common one, or one of the maker's own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal: changed, another size than before.
 */
#pragma once

#include "panel/panel.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_SIZE_FORM (pp_size_form_get_type ())
G_DECLARE_FINAL_TYPE (PpSizeForm, pp_size_form, PP, SIZE_FORM, GtkWidget)

/* mm; shown in `units`. Does not emit "changed". */
void     pp_size_form_set        (PpSizeForm *self,
                                  PpUnits     units,
                                  double      width,
                                  double      height);
double   pp_size_form_get_width  (PpSizeForm *self);
double   pp_size_form_get_height (PpSizeForm *self);
/* TRUE, and the focus goes there, if something stands in a field that cannot be taken. */
gboolean pp_size_form_is_wrong   (PpSizeForm *self);

G_END_DECLS
