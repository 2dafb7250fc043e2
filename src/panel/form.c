/* form.c: names of forms, and measured heights.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/form.h"

#include "panel/name-table.h"

PpHeightGrid *
pp_height_grid_new (double        x0,
                    double        y0,
                    double        step,
                    guint         n_rows,
                    guint         n_columns,
                    const double *heights)
{
  PpHeightGrid *self = g_atomic_rc_box_new (PpHeightGrid);
  gsize n = (gsize) n_rows * n_columns;

  *self = (PpHeightGrid) { x0, y0, step, n_rows, n_columns, g_new (double, n) };
  if (n > 0)
    memcpy (self->heights, heights, n * sizeof (double));
  return self;
}

PpHeightGrid *
pp_height_grid_ref (const PpHeightGrid *self)
{
  return g_atomic_rc_box_acquire ((gpointer) self);
}

static void
height_grid_clear (gpointer self)
{
  g_free (((PpHeightGrid *) self)->heights);
}

void
pp_height_grid_unref (const PpHeightGrid *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full ((gpointer) self, height_grid_clear);
}

static const char * const kind_names[] = {
  [PP_FORM_FLAT] = "flat",
  [PP_FORM_CUPPED] = "cupped",
  [PP_FORM_DOMED] = "domed",
  [PP_FORM_ARCHED] = "arched",
  [PP_FORM_CURLED] = "curled",
  [PP_FORM_LIFTED] = "lifted",
  [PP_FORM_MEASURED] = "measured",
};

const char *
pp_form_kind_get_name (PpFormKind kind)
{
  g_return_val_if_fail (kind < G_N_ELEMENTS (kind_names), NULL);
  return kind_names[kind];
}

gboolean
pp_form_kind_from_name (const char *name,
                        PpFormKind *kind)
{
  int i;

  if (!pp_name_table_find (kind_names, G_N_ELEMENTS (kind_names), name, &i))
    return FALSE;
  *kind = (PpFormKind) i;
  return TRUE;
}
