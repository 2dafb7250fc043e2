/* record-names.c: the words of the file for what a record may be.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/record.h"

#include "panel/name-table.h"
#include "panel/panel.h"

static const char * const shape_names[] = {
  [PP_SHAPE_RECTANGLE] = "rectangle",
  [PP_SHAPE_ELLIPSE] = "ellipse",
  [PP_SHAPE_ARCH] = "arch",
  [PP_SHAPE_FREE] = "free",
};

const char *
pp_background_shape_get_name (PpBackgroundShape shape)
{
  g_return_val_if_fail (shape < G_N_ELEMENTS (shape_names), NULL);
  return shape_names[shape];
}

gboolean
pp_background_shape_from_name (const char        *name,
                               PpBackgroundShape *shape)
{
  int i;

  if (!pp_name_table_find (shape_names, G_N_ELEMENTS (shape_names), name, &i))
    return FALSE;
  *shape = (PpBackgroundShape) i;
  return TRUE;
}

static const char * const role_names[] = {
  [PP_ROLE_NONE] = "",
  [PP_ROLE_VASE] = "vase",
  [PP_ROLE_SHAPE] = "shape",
};

const char *
pp_role_get_name (PpRole role)
{
  g_return_val_if_fail (role < G_N_ELEMENTS (role_names), NULL);
  return role_names[role];
}

gboolean
pp_role_from_name (const char *name,
                   PpRole     *role)
{
  int i;

  if (!pp_name_table_find (role_names, G_N_ELEMENTS (role_names), name, &i))
    return FALSE;
  *role = (PpRole) i;
  return TRUE;
}

static const char * const place_names[] = {
  [PP_PLACE_WALL] = "wall",
  [PP_PLACE_WINDOW] = "window",
};

const char *
pp_place_get_name (PpPlace place)
{
  g_return_val_if_fail (place < G_N_ELEMENTS (place_names), NULL);
  return place_names[place];
}

gboolean
pp_place_from_name (const char *name,
                    PpPlace    *place)
{
  int i;

  if (!pp_name_table_find (place_names, G_N_ELEMENTS (place_names), name, &i))
    return FALSE;
  *place = (PpPlace) i;
  return TRUE;
}

static const char * const kind_names[] = {
  [PP_KIND_FLOWER] = "flower",
  [PP_KIND_BUD] = "bud",
  [PP_KIND_LEAF] = "leaf",
  [PP_KIND_STEM] = "stem",
  [PP_KIND_FILLER] = "filler",
};

const char *
pp_kind_get_name (PpKind kind)
{
  g_return_val_if_fail (kind < G_N_ELEMENTS (kind_names), NULL);
  return kind_names[kind];
}

gboolean
pp_kind_from_name (const char *name,
                   PpKind     *kind)
{
  int i;

  if (!pp_name_table_find (kind_names, G_N_ELEMENTS (kind_names), name, &i))
    return FALSE;
  *kind = (PpKind) i;
  return TRUE;
}

static const char * const what_names[] = {
  [PP_LOG_MIXED] = "mixed",
  [PP_LOG_PLACED] = "placed",
  [PP_LOG_TAKEN_BACK] = "taken-back",
  [PP_LOG_FELL] = "fell",
  [PP_LOG_BROKE] = "broke",
  [PP_LOG_MOVED] = "moved",
  [PP_LOG_PAUSED] = "paused",
};

const char *
pp_log_what_get_name (PpLogWhat what)
{
  g_return_val_if_fail (what < G_N_ELEMENTS (what_names), NULL);
  return what_names[what];
}

gboolean
pp_log_what_from_name (const char *name,
                       PpLogWhat  *what)
{
  int i;

  if (!pp_name_table_find (what_names, G_N_ELEMENTS (what_names), name, &i))
    return FALSE;
  *what = (PpLogWhat) i;
  return TRUE;
}

static const char * const units_names[] = {
  [PP_UNITS_MM] = "mm",
  [PP_UNITS_INCH] = "in",
};

const char *
pp_units_get_name (PpUnits units)
{
  g_return_val_if_fail (units < G_N_ELEMENTS (units_names), NULL);
  return units_names[units];
}

gboolean
pp_units_from_name (const char *name,
                    PpUnits    *units)
{
  int i;

  if (!pp_name_table_find (units_names, G_N_ELEMENTS (units_names), name, &i))
    return FALSE;
  *units = (PpUnits) i;
  return TRUE;
}
