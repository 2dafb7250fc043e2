/* acts.c: the acts on the chosen pieces, as a table.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/acts.h"

static const PpActKind * const acts[] = {
#define PP_ACT(name) &pp_##name##_act,
#include "desk/acts.list"
#undef PP_ACT
};

const PpActKind * const *
pp_acts (guint *n_acts)
{
  g_return_val_if_fail (n_acts != NULL, NULL);

  *n_acts = G_N_ELEMENTS (acts);
  return acts;
}

const PpActKind *
pp_acts_find (const char *name)
{
  g_return_val_if_fail (name != NULL, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (acts); i++)
    if (g_str_equal (acts[i]->name, name))
      return acts[i];
  return NULL;
}
