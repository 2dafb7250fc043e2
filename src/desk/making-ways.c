/* making-ways.c: the list of the ways of making a piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/making-ways.h"

/* As they stand at the bench. */
static const PpMakingWay *const ways[] = {
  &pp_making_way_like,
  &pp_making_way_measures,
  &pp_making_way_ring,
  &pp_making_way_ladder,
  &pp_making_way_picture,
  &pp_making_way_drawing,
};

guint
pp_making_n_ways (void)
{
  return G_N_ELEMENTS (ways);
}

const PpMakingWay *
pp_making_way_get (guint number)
{
  g_return_val_if_fail (number < G_N_ELEMENTS (ways), ways[0]);
  return ways[number];
}

guint
pp_making_way_find (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    if (g_str_equal (ways[i]->name, name))
      return i;
  g_return_val_if_reached (0);
}

void
pp_making_way_add_hint (GtkBox     *form,
                        const char *words)
{
  GtkWidget *hint;

  g_return_if_fail (GTK_IS_BOX (form) && words != NULL);

  hint = g_object_new (GTK_TYPE_LABEL, "label", words, "xalign", 0.0, "wrap", TRUE,
                       "max-width-chars", 36, NULL);
  gtk_widget_add_css_class (hint, "pp-hint");
  gtk_box_append (form, hint);
}
