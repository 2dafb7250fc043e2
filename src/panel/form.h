/* form.h: how the underside of a piece is shaped, and the crown on its top.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plain values in the piece's own frame; the heights they give are computed in shape/height.h.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  PP_FORM_FLAT,
  PP_FORM_CUPPED,
  PP_FORM_DOMED,
  PP_FORM_ARCHED,
  PP_FORM_CURLED,
  PP_FORM_LIFTED,
  PP_FORM_MEASURED,
} PpFormKind;

/* Measured heights: row i, column j stands at (x0 + j·step, y0 + i·step). Counted atomically. */
typedef struct
{
  double  x0;
  double  y0;
  double  step;
  guint   n_rows;
  guint   n_columns;
  double *heights; /* row after row */
} PpHeightGrid;

/* `heights` holds n_rows·n_columns numbers and is copied. Returns (transfer full). */
PpHeightGrid *pp_height_grid_new   (double              x0,
                                    double              y0,
                                    double              step,
                                    guint               n_rows,
                                    guint               n_columns,
                                    const double       *heights);
PpHeightGrid *pp_height_grid_ref   (const PpHeightGrid *self);
void          pp_height_grid_unref (const PpHeightGrid *self);

typedef struct
{
  PpFormKind          kind;
  double              rise; /* mm; all but flat and measured */
  double              foot; /* mm; cupped, 10 unless said */
  double              flat; /* mm; lifted; NAN: half its length */
  const PpHeightGrid *grid; /* measured, else NULL */
  const char         *extra;
} PpForm;

typedef struct
{
  double      height; /* mm; 0: no crown */
  double      radius; /* mm, more than 0 where there is one */
  const char *extra;
} PpCrown;

/* "flat", "cupped", ... as in the file. (transfer none) */
const char *pp_form_kind_get_name  (PpFormKind   kind);
gboolean    pp_form_kind_from_name (const char  *name,
                                    PpFormKind  *kind);
/* A piece is shaped if its form is not flat. */
static inline gboolean
pp_form_is_shaped (const PpForm *self)
{
  return self->kind != PP_FORM_FLAT;
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpHeightGrid, pp_height_grid_unref)

G_END_DECLS
